package rainward.brief.plain;

import java.util.List;
import rainward.brief.Brief;
import rainward.brief.Orders.FieldLine;
import rainward.brief.words.CautionWords;
import rainward.brief.words.GroundWords;
import rainward.brief.words.OpeningWords;
import rainward.brief.words.OrderWords;
import rainward.brief.words.Reader;
import rainward.brief.words.SkyWords;
import rainward.farm.UnitSystem;

/** The brief as plain text that stands alone, {@value Columns#WIDTH} columns wide. */
public final class BriefText {

    private final Brief brief;
    private final Reader reader;
    private final OrderWords order;
    private final SkyWords sky;
    private final GroundWords ground;
    private final TextPage page = new TextPage();

    private BriefText(Brief brief, UnitSystem units) {
        this.brief = brief;
        this.reader = new Reader(brief.heading().zone(), units);
        this.order = new OrderWords(brief, reader);
        this.sky = new SkyWords(reader);
        this.ground = new GroundWords(reader);
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
        list("Needs your answer", brief.footing().questions());
        list(
                "Cautions",
                brief.cautions().stream().map(new CautionWords(reader)::of).toList());
        rain();
        list(
                "Changed since the brief before",
                brief.changes().stream().map(order::change).toList());
        later();
        list(
                "Soil",
                brief.ground().stream()
                        .map(line -> line.property() + ": " + ground.soil(line))
                        .toList());
        ahead();
        footing();
        return page.toString();
    }

    private void opening() {
        var opening = new OpeningWords(brief, reader);
        page.line(
                "",
                brief.heading().farm() + ", "
                        + reader.clock().longDay(brief.heading().day()));
        page.rule();
        page.line("", opening.headline());
        opening.rain().ifPresent(rain -> page.line("", rain));
        opening.notices().forEach(notice -> page.line("! ", "  ", notice));
        sky.urgent(brief.sky()).forEach(line -> page.line("! ", "  ", line));
    }

    private void today() {
        if (brief.orders().today().isEmpty()) {
            return;
        }
        page.heading("Today, in order");
        brief.orders().today().forEach(this::field);
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

    private void later() {
        list(
                "After today",
                brief.orders().later().stream()
                        .map(line -> line.rank() + ". " + line.place().field() + ", "
                                + order.later(line))
                        .toList());
        list(
                "Not in the order",
                order.leftOut().stream()
                        .map(left -> left.fields() + ": " + left.why())
                        .toList());
    }

    private void rain() {
        if (brief.sky().rain().isEmpty()) {
            return;
        }
        page.heading("Rain");
        for (SkyWords.Rain rain : sky.rain(brief.sky().rain())) {
            page.line("- ", "  ", rain.properties() + ": " + rain.words());
            if (!rain.byDay().isEmpty()) {
                page.line("  ", String.join("  ", rain.byDay()));
            }
        }
    }

    private void ahead() {
        list(
                "On the trucks",
                brief.ahead().load().stream()
                        .map(l -> l.what() + ": " + l.amount())
                        .toList());
        list("Look at", brief.ahead().standChecks().stream().map(ground::check).toList());
        list("Season", ground.season(brief.ahead().season()));
    }

    private void footing() {
        list(
                "Did not go out",
                brief.footing().undelivered().stream()
                        .map(u -> u.subject() + ", to " + u.recipient() + ": " + u.why())
                        .toList());
        page.heading("Where this comes from");
        page.items(ground.forecasts(brief.footing()));
        page.items(brief.footing().warnings());
        page.items(brief.footing().credits());
        page.line("", CautionWords.WHAT_GOES_BEFORE);
    }

    private void list(String heading, List<String> items) {
        if (!items.isEmpty()) {
            page.heading(heading);
            page.items(items);
        }
    }
}
