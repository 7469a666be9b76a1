package rainward.brief.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * An element of a page. Text and attribute values are escaped where they are written and nowhere
 * else can markup come in, so that no name can become one.
 */
public final class Element {

    private static final List<String> VOID = List.of("img", "meta");

    private static final Pattern NUMBER_AND_UNIT =
            Pattern.compile("(\\d) (ac|ha|in|mm|am|pm|mph|m/s|F|C|min|lb|kg)\\b");

    private final String tag;
    private final Map<String, String> attributes = new LinkedHashMap<>();
    private final List<Part> parts = new ArrayList<>();

    /** Text or an element inside another. */
    private interface Part {
        void write(StringBuilder out);
    }

    private Element(String tag) {
        this.tag = tag;
    }

    public static Element of(String tag) {
        return new Element(tag);
    }

    /** A table that only lays out; screen readers are told so. */
    static Element layout() {
        return of("table")
                .attribute("role", "presentation")
                .attribute("width", "100%")
                .attribute("cellpadding", "0")
                .attribute("cellspacing", "0")
                .attribute("border", "0");
    }

    public Element attribute(String name, String value) {
        attributes.put(name, value);
        return this;
    }

    public Element style(String css) {
        return attribute("style", css);
    }

    /** Colours by day, and the class by which the night's colours come in. */
    Element ink(Palette ink, String css) {
        return attribute("class", ink.cssClass()).style(ink.css() + css);
    }

    public Element text(String text) {
        parts.add(out -> out.append(escaped(held(text))));
        return this;
    }

    /** A number keeps its unit beside it at the end of a line. */
    private static String held(String text) {
        return NUMBER_AND_UNIT.matcher(text).replaceAll("$1\u00A0$2");
    }

    public Element add(Element... children) {
        for (Element child : children) {
            parts.add(child::write);
        }
        return this;
    }

    public Element addAll(List<Element> children) {
        children.forEach(this::add);
        return this;
    }

    void write(StringBuilder out) {
        out.append('<').append(tag);
        attributes.forEach((name, value) -> out.append(' ')
                .append(name)
                .append("=\"")
                .append(escaped(value))
                .append('"'));
        if (VOID.contains(tag)) {
            out.append("/>");
            return;
        }
        out.append('>');
        parts.forEach(part -> part.write(out));
        out.append("</").append(tag).append('>');
        // Mail lines may hold 998 octets (RFC 5322 2.1.1), and a person may want to read the
        // source.
        if (BREAKS_AFTER.contains(tag)) {
            out.append('\n');
        }
    }

    private static final List<String> BREAKS_AFTER =
            List.of("tr", "table", "p", "h1", "h2", "li", "ul", "div", "td", "title", "head");

    static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }

    @Override
    public String toString() {
        StringBuilder out = new StringBuilder();
        write(out);
        return out.toString();
    }
}
