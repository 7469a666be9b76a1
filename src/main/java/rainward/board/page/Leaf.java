package rainward.board.page;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;

/** Draws pages with the templates that were compiled into the program. */
public final class Leaf {

    private final TemplateEngine engine = TemplateEngine.createPrecompiled(ContentType.Html);

    /**
     * A few words where no page can be shown.
     *
     * @param title above them
     * @param words for the person
     * @param back where to go on
     */
    public record Words(String title, String words, String back) {}

    /**
     * Draws a page.
     *
     * @param template its file, without the ending
     * @param page what it shows, as the template's one parameter
     */
    public String draw(String template, Object page) {
        StringOutput out = new StringOutput();
        engine.render(template + ".jte", page, out);
        return out.toString();
    }
}
