package rainward.brief.page;

import java.util.ArrayList;
import java.util.List;
import rainward.brief.Alert;
import rainward.brief.words.AlertWords;
import rainward.brief.words.CautionWords;
import rainward.farm.UnitSystem;

/** An alert as a page. */
public final class AlertHtml {

    private AlertHtml() {}

    public static String of(Alert alert, UnitSystem units) {
        AlertWords words = new AlertWords(alert, units);
        List<Element> parts = new ArrayList<>();
        parts.add(
                HtmlFrame.box(Palette.NOTICE, "font-size:18px;font-weight:600;", words.headline()));
        parts.add(Element.of("p").style("margin:0 0 6px 0;").text("Why: " + words.why()));
        for (AlertWords.Part part : words.parts()) {
            parts.add(HtmlFrame.heading(part.heading()));
            parts.add(HtmlFrame.list(part.items()));
        }
        parts.add(HtmlFrame.foot(words.written()));
        parts.add(HtmlFrame.quiet(CautionWords.WHAT_GOES_BEFORE));
        return HtmlFrame.page(words.subject(), parts);
    }
}
