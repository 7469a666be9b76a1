package rainward.brief.page;

import java.util.List;

/**
 * The sheet of paper that briefs and alerts are set on: at most 600 wide, down to 320, by day and
 * by night, with nothing to fetch and nothing to run.
 */
final class HtmlFrame {

    static final String FONT = "font-family:-apple-system,'Segoe UI',Roboto,Helvetica,Arial,"
            + "sans-serif;font-size:16px;line-height:1.4;";

    private static final String STYLE = """
            body{margin:0;padding:0}
            @media (max-width:420px){.sheet{padding:12px 10px!important}.edge{padding:0!important}}
            @media (prefers-color-scheme:dark){
            .picture{filter:invert(1) hue-rotate(180deg)}
            %s
            }
            """;

    private HtmlFrame() {}

    static String page(String title, List<Element> content) {
        Element sheet = Element.of("td")
                .ink(
                        Palette.PAGE,
                        FONT + "padding:18px 20px;border-radius:8px;text-align:left;"
                                + "overflow-wrap:anywhere;")
                .addAll(content);
        sheet.attribute("class", Palette.PAGE.cssClass() + " sheet");
        Element desk = Element.of("td")
                .ink(Palette.DESK, "padding:14px 8px;")
                .attribute("align", "center")
                .add(Element.layout()
                        .style("max-width:600px;")
                        .add(Element.of("tr").add(sheet)));
        desk.attribute("class", Palette.DESK.cssClass() + " edge");
        return "<!DOCTYPE html>\n"
                + Element.of("html")
                        .attribute("lang", "en")
                        .add(head(title))
                        .add(Element.of("body")
                                .ink(Palette.DESK, "margin:0;padding:0;")
                                .add(Element.layout().add(Element.of("tr").add(desk))));
    }

    private static Element head(String title) {
        return Element.of("head")
                .add(Element.of("meta").attribute("charset", "utf-8"))
                .add(Element.of("meta")
                        .attribute("name", "viewport")
                        .attribute("content", "width=device-width, initial-scale=1"))
                .add(Element.of("meta")
                        .attribute("name", "color-scheme")
                        .attribute("content", "light dark"))
                .add(Element.of("title").text(title))
                .add(Element.of("style").text(STYLE.formatted(Palette.nightRules())));
    }

    static Element heading(String words) {
        return headingWithin(words, "22px 0 6px 0");
    }

    private static Element headingWithin(String words, String margin) {
        return Element.of("h2")
                .ink(Palette.STRONG, "font-size:17px;line-height:1.3;margin:" + margin + ";")
                .text(words);
    }

    /** A heading with a remark at the right edge, over a column of figures. */
    static Element heading(String words, String remark) {
        return Element.layout()
                .style("margin:22px 0 6px 0;")
                .add(Element.of("tr")
                        .add(Element.of("td").add(headingWithin(words, "0")))
                        .add(Element.of("td")
                                .ink(Palette.QUIET, "font-size:13px;text-align:right;")
                                .text(remark)));
    }

    static Element quiet(String words) {
        return Element.of("p")
                .ink(Palette.QUIET, "font-size:14px;margin:2px 0 6px 0;")
                .text(words);
    }

    /** What stands at the foot, set off from what is above it. */
    static Element foot(String words) {
        return Element.of("p")
                .ink(Palette.QUIET, "font-size:14px;margin:18px 0 6px 0;")
                .text(words);
    }

    /** A box across the sheet. */
    static Element box(Palette ink, String css, String words) {
        return Element.layout()
                .style("margin:0 0 8px 0;")
                .add(Element.of("tr")
                        .add(Element.of("td")
                                .ink(ink, "padding:9px 12px;border-radius:6px;" + css)
                                .text(words)));
    }

    static Element list(List<String> items) {
        return Element.of("ul")
                .style("margin:0 0 6px 0;padding:0 0 0 20px;")
                .addAll(items.stream()
                        .map(item -> Element.of("li").style("margin:0 0 4px 0;").text(item))
                        .toList());
    }
}
