package rainward.brief.plain;

import rainward.brief.Alert;
import rainward.brief.words.AlertWords;
import rainward.brief.words.CautionWords;
import rainward.farm.UnitSystem;

/** An alert as plain text that stands alone. */
public final class AlertText {

    private AlertText() {}

    /** One line, the same for all mails on one thing. */
    public static String subject(Alert alert, UnitSystem units) {
        return new AlertWords(alert, units).subject();
    }

    public static String of(Alert alert, UnitSystem units) {
        AlertWords words = new AlertWords(alert, units);
        TextPage page = new TextPage();
        page.line("", words.headline());
        page.rule();
        page.line("", "Why: " + words.why());
        for (AlertWords.Part part : words.parts()) {
            page.heading(part.heading());
            page.items(part.items());
        }
        page.heading("Where this comes from");
        page.line("", words.written());
        page.line("", CautionWords.WHAT_GOES_BEFORE);
        return page.toString();
    }
}
