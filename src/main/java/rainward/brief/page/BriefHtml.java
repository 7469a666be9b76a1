package rainward.brief.page;

import java.util.ArrayList;
import java.util.List;
import rainward.brief.Brief;
import rainward.brief.Orders.FieldLine;
import rainward.brief.Orders.StageLine;
import rainward.brief.words.BriefWords;
import rainward.brief.words.CautionWords;
import rainward.brief.words.OpeningWords;
import rainward.brief.words.OrderWords;
import rainward.brief.words.Reader;
import rainward.farm.UnitSystem;

/** The brief as a page: the day's order on the first screen, what it rests on below. */
public final class BriefHtml {

    private static final String CELL = "padding:2px 10px 2px 0;vertical-align:top;font-size:15px;";

    private final Brief brief;
    private final Pictures pictures;
    private final Reader reader;
    private final BriefWords words;
    private final OrderWords order;
    private final List<Element> parts = new ArrayList<>();

    private BriefHtml(Brief brief, UnitSystem units, Pictures pictures) {
        this.brief = brief;
        this.pictures = pictures;
        this.reader = new Reader(brief.heading().zone(), units);
        this.words = new BriefWords(brief, reader);
        this.order = words.order();
    }

    /**
     * Writes the page.
     *
     * @param units that the reader knows
     * @param pictures where the page finds them
     */
    public static String of(Brief brief, UnitSystem units, Pictures pictures) {
        return new BriefHtml(brief, units, pictures).write();
    }

    private String write() {
        opening();
        today();
        people();
        words.beforeTheRain().forEach(this::section);
        rain();
        words.afterTheRain().forEach(this::section);
        parts.add(HtmlFrame.foot(CautionWords.WHAT_GOES_BEFORE));
        return HtmlFrame.page(words.opening().subject(), parts);
    }

    private void opening() {
        OpeningWords opening = words.opening();
        parts.add(Element.of("h1")
                .ink(Palette.STRONG, "font-size:20px;line-height:1.3;margin:0;")
                .text(reader.clock().longDay(brief.heading().day())));
        parts.add(HtmlFrame.quiet(brief.heading().farm()));
        parts.add(HtmlFrame.box(
                Palette.HEADLINE, "font-size:17px;font-weight:600;", opening.headline()));
        opening.rain().ifPresent(rain -> parts.add(HtmlFrame.quiet(rain)));
        words.notices().forEach(this::notice);
    }

    private void notice(String words) {
        parts.add(HtmlFrame.box(Palette.NOTICE, "", words));
    }

    private void today() {
        if (brief.orders().today().isEmpty()) {
            return;
        }
        parts.add(HtmlFrame.heading("Today, in order", "chance of a stand"));
        brief.orders().today().forEach(line -> parts.add(field(line)));
        if (brief.orders().today().stream().anyMatch(line -> line.sown().isPresent())) {
            parts.add(HtmlFrame.quiet(BriefWords.CHANCE_OF_A_STAND));
        }
    }

    private Element field(FieldLine line) {
        Element rank = Element.of("td")
                .style("width:30px;padding:0;vertical-align:top;")
                .add(Element.of("div")
                        .ink(
                                Palette.RANK,
                                "width:30px;padding:4px 0;border-radius:6px;text-align:center;"
                                        + "font-weight:700;")
                        .text(String.valueOf(line.rank())));
        Element name = Element.of("td")
                .style("padding:2px 8px 2px 10px;vertical-align:top;")
                .add(Element.of("strong")
                        .style("font-size:17px;")
                        .text(line.place().field()))
                .add(Element.of("span")
                        .ink(Palette.QUIET, "font-size:15px;")
                        .text(" " + order.place(line)));
        Element chance = Element.of("td")
                .ink(
                        Palette.STRONG,
                        "padding:0;text-align:right;vertical-align:top;"
                                + "white-space:nowrap;font-size:19px;font-weight:700;")
                .text(line.sown().map(s -> order.chance(s.chance())).orElse(""));
        Element below = Element.of("td")
                .attribute("colspan", "2")
                .style("padding:0 0 0 10px;")
                .add(stages(line))
                .addAll(reason(line));
        return Element.layout()
                .style("margin:0 0 14px 0;")
                .add(Element.of("tr").add(rank, name, chance))
                .add(Element.of("tr").add(Element.of("td"), below));
    }

    private static List<Element> reason(FieldLine line) {
        List<Element> lines = new ArrayList<>();
        if (line.sown().filter(s -> s.fallBack()).isPresent()) {
            lines.add(HtmlFrame.quiet("Fall-back mix."));
        }
        if (!line.reason().isEmpty()) {
            lines.add(HtmlFrame.quiet(line.reason()));
        }
        return lines;
    }

    private Element stages(FieldLine line) {
        Element table = Element.layout();
        for (StageLine stage : line.stages()) {
            table.add(row(order.when(stage), OrderWords.what(stage, line), OrderWords.who(stage)));
        }
        return table;
    }

    /** Time, task and hands, the hands on a line of their own where the screen is narrow. */
    private static Element row(String when, String what, String who) {
        return Element.of("tr")
                .add(Element.of("td")
                        .style(CELL + "width:1%;white-space:nowrap;")
                        .text(when))
                .add(Element.of("td")
                        .style(CELL)
                        .text(what + "  ")
                        .add(Element.of("span")
                                .ink(Palette.QUIET, "font-size:14px;display:inline-block;")
                                .text(who)));
    }

    private void people() {
        if (brief.orders().today().isEmpty()) {
            return;
        }
        parts.add(HtmlFrame.heading("Who does what"));
        order.byPerson().forEach((person, tasks) -> {
            parts.add(
                    Element.of("p").style("margin:6px 0 2px 0;font-weight:700;").text(person));
            Element table = Element.layout();
            tasks.forEach(task -> table.add(Element.of("tr")
                    .add(Element.of("td")
                            .style(CELL + "width:1%;white-space:nowrap;")
                            .text(order.when(task.stage())))
                    .add(Element.of("td").style(CELL).text(OrderWords.task(task)))));
            parts.add(table);
        });
    }

    private void rain() {
        if (!brief.sky().rain().isEmpty()) {
            parts.add(HtmlFrame.heading("Rain"));
            parts.addAll(new RainBlock(words.sky(), pictures).of(brief.sky().rain()));
        }
    }

    private void section(BriefWords.Section section) {
        parts.add(HtmlFrame.heading(section.heading()));
        parts.add(HtmlFrame.list(section.items()));
    }
}
