package rainward.brief.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import rainward.brief.AlertDays;
import rainward.brief.BriefDays;
import rainward.farm.UnitSystem;

/** What a strict mail client and a tired reader ask of every page; an XML parser takes it apart. */
class PageStrictnessTest {

    private static final Set<String> PLAIN_TAGS = Set.of(
            "html", "head", "meta", "title", "style", "body", "table", "tr", "td", "h1", "h2", "p",
            "ul", "li", "strong", "span", "br", "img", "div");

    private static final Set<String> PLAIN_ATTRIBUTES = Set.of(
            "lang",
            "charset",
            "name",
            "content",
            "role",
            "width",
            "height",
            "cellpadding",
            "cellspacing",
            "border",
            "align",
            "colspan",
            "class",
            "style",
            "src",
            "alt");

    /** Every page of every named day, by name. */
    static Stream<String> pages() {
        return all().keySet().stream();
    }

    private static Map<String, String> all() {
        Map<String, String> pages = new TreeMap<>();
        BriefDays.all().keySet().forEach(day -> pages.put(day, BriefHtmlTest.page(day)));
        AlertDays.all()
                .forEach((name, alert) ->
                        pages.put(name, AlertHtml.of(alert.get(), UnitSystem.US_CUSTOMARY)));
        return pages;
    }

    private static Document parsed(String name) {
        try {
            var factory = DocumentBuilderFactory.newInstance();
            return factory.newDocumentBuilder()
                    .parse(new InputSource(new StringReader(all().get(name))));
        } catch (Exception e) {
            throw new AssertionError(name + " is not well-formed: " + e.getMessage(), e);
        }
    }

    private static void eachElement(Node node, Consumer<Element> look) {
        if (node instanceof Element element) {
            look.accept(element);
        }
        for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
            eachElement(child, look);
        }
    }

    private static List<String> attributes(Element element) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < element.getAttributes().getLength(); i++) {
            names.add(element.getAttributes().item(i).getNodeName());
        }
        return names;
    }

    @ParameterizedTest
    @MethodSource("pages")
    void usesPlainTagsAndAttributesOnly(String name) {
        eachElement(parsed(name), element -> {
            assertThat(PLAIN_TAGS).contains(element.getTagName());
            assertThat(PLAIN_ATTRIBUTES).containsAll(attributes(element));
        });
    }

    @ParameterizedTest
    @MethodSource("pages")
    void fetchesNothing(String name) {
        eachElement(parsed(name), element -> {
            assertThat(element.getAttribute("src")).matches("|cid:rain-\\d+");
            assertThat(element.getAttribute("style")).doesNotContain("url(", "@import");
        });
        assertThat(all().get(name)).doesNotContain("http:", "https:", "//");
    }

    @ParameterizedTest
    @MethodSource("pages")
    void everyPictureTellsInWordsWhatItShows(String name) {
        eachElement(parsed(name), element -> {
            if (element.getTagName().equals("img")) {
                assertThat(element.getAttribute("alt")).matches("(?s).+: (.*\\d+%.*|dry to \\w+)");
            }
        });
    }

    /** Nothing but the pictures has a width in dots, and these give way to 100% of a phone. */
    @ParameterizedTest
    @MethodSource("pages")
    void fitsAPhoneOf320(String name) {
        eachElement(parsed(name), element -> {
            String width = element.getAttribute("width");
            if (element.getTagName().equals("img")) {
                assertThat(Integer.parseInt(width)).isLessThanOrEqualTo(320 - 2 * 10);
                assertThat(element.getAttribute("style")).contains("width:100%", "height:auto");
            } else {
                assertThat(width).isIn("", "100%");
            }
        });
    }

    @Test
    void hostileNamesAreShownAsTheyAreWritten() {
        assertThat(parsed("hostile-names").getDocumentElement().getTextContent())
                .contains("<script>alert(1)</script>")
                .contains("\"><img src=x onerror=alert(1)> & so on\\u2028next line")
                .contains("\\u202erotcart")
                .doesNotContain("\u202E", "\u2028");
    }

    /** WCAG 2.1, 1.4.3: text against what is behind it, by day and by night. */
    @ParameterizedTest
    @MethodSource("pages")
    void everyTextHasEnoughContrastByDayAndByNight(String name) {
        Document page = parsed(name);
        Map<String, Colours> night = night(page);
        Colours start = new Colours("#000000", "#ffffff");
        assertContrast(page.getElementsByTagName("body").item(0), start, start, night);
    }

    private static void assertContrast(
            Node node, Colours day, Colours night, Map<String, Colours> rules) {
        Colours dayHere = day;
        Colours nightHere = night;
        if (node instanceof Element element) {
            dayHere = day.then(Colours.in(element.getAttribute("style")));
            nightHere = night.then(Colours.in(element.getAttribute("style")));
            for (String rule : element.getAttribute("class").split(" ")) {
                nightHere = nightHere.then(rules.getOrDefault(rule, nightHere));
            }
        }
        if (node.getNodeType() == Node.TEXT_NODE && !node.getTextContent().isBlank()) {
            String text = node.getTextContent().strip();
            assertThat(day.contrast()).as("by day: %s", text).isGreaterThanOrEqualTo(4.5);
            assertThat(night.contrast()).as("by night: %s", text).isGreaterThanOrEqualTo(4.5);
        }
        for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
            assertContrast(child, dayHere, nightHere, rules);
        }
    }

    private static Map<String, Colours> night(Document page) {
        String style = page.getElementsByTagName("style").item(0).getTextContent();
        String rules = style.substring(style.indexOf("prefers-color-scheme:dark"));
        Map<String, Colours> night = new TreeMap<>();
        Matcher rule = Pattern.compile("\\.(i-[a-z]+)\\{([^}]*)}").matcher(rules);
        while (rule.find()) {
            night.put(rule.group(1), Colours.in(rule.group(2)));
        }
        assertThat(night).hasSameSizeAs(Palette.values());
        return night;
    }

    /** Ink and paper; blank where an element does not set them. */
    record Colours(String ink, String paper) {

        static Colours in(String css) {
            return new Colours(
                    find("(?:^|;)color:(#\\w{6})", css), find("background-color:(#\\w{6})", css));
        }

        private static String find(String pattern, String css) {
            Matcher found = Pattern.compile(pattern).matcher(css);
            return found.find() ? found.group(1) : "";
        }

        Colours then(Colours inner) {
            return new Colours(
                    inner.ink.isEmpty() ? ink : inner.ink,
                    inner.paper.isEmpty() ? paper : inner.paper);
        }

        /** WCAG 2.1, contrast ratio. */
        double contrast() {
            double a = luminance(ink);
            double b = luminance(paper);
            return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
        }

        /** WCAG 2.1, relative luminance. */
        private static double luminance(String colour) {
            int rgb = Integer.parseInt(colour.substring(1), 16);
            return 0.2126 * linear(rgb >> 16) + 0.7152 * linear(rgb >> 8) + 0.0722 * linear(rgb);
        }

        private static double linear(int part) {
            double share = (part & 0xFF) / 255.0;
            return share <= 0.03928 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
        }
    }

    /** Black on white is 21 by definition; the grey is the usual worked example of 4.54. */
    @ParameterizedTest
    @CsvSource({"#000000, #ffffff, 21.0", "#767676, #ffffff, 4.54", "#ffffff, #ffffff, 1.0"})
    void theMeasureOfContrastIsThatOfWcag(String ink, String paper, double ratio) {
        assertThat(new Colours(ink, paper).contrast())
                .isCloseTo(ratio, org.assertj.core.api.Assertions.within(0.005));
    }
}
