package rainward.brief.plain;

import java.util.List;
import rainward.brief.Brief;
import rainward.brief.Orders.FieldLine;
import rainward.brief.words.BriefWords;
import rainward.brief.words.CautionWords;
import rainward.brief.words.OpeningWords;
import rainward.brief.words.OrderWords;
import rainward.brief.words.Reader;
import rainward.brief.words.SkyWords;
import rainward.farm.UnitSystem;

/** The brief as plain text that stands alone, {@value Columns#WIDTH} columns wide. */
public final class BriefText {

    private final Brief brief;
    private final Reader reader;
    private final BriefWords words;
    private final OrderWords order;
    private final TextPage page = new TextPage();

    private BriefText(Brief brief, UnitSystem units) {
        this.brief = brief;
        this.reader = new Reader(brief.heading().zone(), units);
        this.words = new BriefWords(brief, reader);
        this.order = words.order();
    }

    /** One line. */
    public static String subject(Brief brief, UnitSystem units) {
        return new OpeningWords(brief, new Reader(brief.heading().zone(), units)).subject();
    }

    public static String of(Brief brief, UnitSystem units) {
        return new BriefText(brief, units).write();
    }

    private String write() {
        opening();
        today();
        people();
        words.beforeTheRain().forEach(this::section);
        rain();
        words.afterTheRain().forEach(this::section);
        page.line("", CautionWords.WHAT_GOES_BEFORE);
        return page.toString();
    }

    private void opening() {
        OpeningWords opening = words.opening();
        page.line(
                "",
                brief.heading().farm() + ", "
                        + reader.clock().longDay(brief.heading().day()));
        page.rule();
        page.line("", opening.headline());
        opening.rain().ifPresent(rain -> page.line("", rain));
        words.notices().forEach(notice -> page.line("! ", "  ", notice));
    }

    private void today() {
        if (brief.orders().today().isEmpty()) {
            return;
        }
        page.heading("Today, in order");
        brief.orders().today().forEach(this::field);
        if (brief.orders().today().stream().anyMatch(line -> line.sown().isPresent())) {
            page.line("", BriefWords.CHANCE_OF_A_STAND);
        }
    }

    private void field(FieldLine line) {
        String chance = line.sown()
                .map(s -> ", chance of a stand " + order.chance(s.chance())
                        + (s.fallBack() ? " (fall-back mix)" : ""))
                .orElse("");
        page.line(
                Columns.padded(line.rank() + ".", 4),
                "    ",
                line.place().field() + ", " + order.place(line) + chance);
        page.rows(
                "    ",
                line.stages().stream()
                        .map(s ->
                                List.of(order.when(s), OrderWords.what(s, line), OrderWords.who(s)))
                        .toList());
        if (!line.reason().isEmpty()) {
            page.line("    ", line.reason());
        }
    }

    private void people() {
        if (brief.orders().today().isEmpty()) {
            return;
        }
        page.heading("Who does what");
        order.byPerson().forEach((person, tasks) -> {
            page.line("", person);
            page.rows(
                    "  ",
                    tasks.stream()
                            .map(t -> List.of(order.when(t.stage()), OrderWords.task(t)))
                            .toList());
        });
    }

    private void rain() {
        if (brief.sky().rain().isEmpty()) {
            return;
        }
        page.heading("Rain");
        for (SkyWords.Rain rain : words.sky().rain(brief.sky().rain())) {
            page.line("- ", "  ", rain.properties() + ": " + rain.words());
            if (!rain.byDay().isEmpty()) {
                page.line("  ", String.join("  ", rain.byDay()));
            }
        }
    }

    private void section(BriefWords.Section section) {
        page.heading(section.heading());
        page.items(section.items());
    }
}
