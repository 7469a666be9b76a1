package rainward.brief.plain;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import rainward.brief.Alert;
import rainward.brief.Brief;
import rainward.brief.ForecastAge;
import rainward.brief.Orders.FieldLine;
import rainward.brief.words.AlertWords;
import rainward.brief.words.OpeningWords;
import rainward.brief.words.Reader;
import rainward.farm.UnitSystem;
import rainward.window.StormWindow;

/**
 * Brief and alert for a gateway to text messages: at most {@value #LENGTH} characters, all of them
 * in the basic set of GSM 7 bit (3GPP TS 23.038), so that one message holds it.
 */
public final class ShortForm {

    /** Characters of one message. */
    public static final int LENGTH = 160;

    /** What of it the fields may take; the rest is for the day and for what is behind them. */
    private static final int FIELDS_LENGTH = 120;

    /** Letters of the basic set that are not ASCII but may be kept. */
    private static final String KEPT = "£¥èéùìòÇØøÅåÆæßÉÄÖÑÜ§¿äöñüà";

    private ShortForm() {}

    /** The order of the day, as many fields as fit. */
    public static String of(Brief brief, UnitSystem units) {
        Reader reader = new Reader(brief.heading().zone(), units);
        List<String> parts = new ArrayList<>();
        String day = reader.clock()
                .weekday(brief.heading()
                        .day()
                        .atTime(12, 0)
                        .atZone(brief.heading().zone())
                        .toInstant());
        parts.add(day + (brief.heading().written().late() ? " (late)" : "") + ":");
        if (brief.footing().trust().compareTo(ForecastAge.Trust.STALE) >= 0) {
            parts.add("NO FRESH FORECAST.");
        }
        if (brief.orders().today().isEmpty()) {
            parts.add(noWork(brief, reader));
        } else {
            parts.add(fields(brief.orders().today(), reader));
        }
        String order = String.join(" ", parts);
        return new OpeningWords(brief, reader)
                .rain()
                .map(rain -> order + (order.endsWith(".") ? " " : ". ") + rain)
                .map(ShortForm::basic)
                .filter(text -> text.length() <= LENGTH)
                .orElseGet(() -> fitted(order));
    }

    /** As the opening of the brief says it, but for what it says of the pages below. */
    private static String noWork(Brief brief, Reader reader) {
        return switch (brief.heading().kind()) {
            case NO_FORECAST -> "There is no order. Look at the sky.";
            case NOTHING_FITS -> "Fields wait, none fits into the days ahead. The board says why.";
            case WORK, WORK_LATER, TOO_WET, SEASON_OVER, NOTHING_PENDING ->
                new OpeningWords(brief, reader).headline();
        };
    }

    /** As many fields as have room, and how many more there are. */
    private static String fields(List<FieldLine> today, Reader reader) {
        List<String> lines = today.stream().map(line -> field(line, reader)).toList();
        int most = lines.size();
        while (most > 1 && String.join(", ", lines.subList(0, most)).length() > FIELDS_LENGTH) {
            most--;
        }
        int more = lines.size() - most;
        return String.join(", ", lines.subList(0, most)) + (more > 0 ? ", " + more + " more" : "");
    }

    private static String field(FieldLine line, Reader reader) {
        return line.rank() + " " + line.place().field() + " "
                + reader.clock().time(line.stages().get(0).work().from()) + " "
                + line.stages().get(0).stage();
    }

    /** What has happened, in one message. */
    public static String of(Alert alert, UnitSystem units) {
        Reader reader = new Reader(alert.origin().zone(), units);
        if (alert.news() instanceof Alert.WindowNews news) {
            return fitted(window(news, alert.why(), reader));
        }
        return fitted(new AlertWords(alert, units).headline());
    }

    private static String window(Alert.WindowNews news, String why, Reader reader) {
        StormWindow window = news.window();
        String where = String.join(", ", window.properties());
        if (news.step() == Alert.Step.CLOSED) {
            return "Storm window closed: " + where + ": " + why;
        }
        String fits = window.fits().stream()
                .map(fit -> fit.field() + " by " + reader.clock().dayTime(fit.lastSafeStart()))
                .collect(Collectors.joining(", "));
        String changed = news.step() == Alert.Step.CHANGED ? "Changed: rain " : "Rain ";
        return changed + Reader.percent(window.chance()) + " "
                + reader.clock().dayTime(window.arrival().p10()) + "-"
                + reader.clock().dayTime(window.arrival().p90()) + " " + where
                + (fits.isEmpty() ? ". No field fits before it" : ". Start " + fits);
    }

    /** Turns what the basic set lacks into its nearest letters and cuts at the length. */
    static String fitted(String text) {
        String out = basic(text);
        return out.length() <= LENGTH ? out : out.substring(0, LENGTH - 2) + "..";
    }

    private static String basic(String text) {
        return text.codePoints().mapToObj(ShortForm::basic).collect(Collectors.joining());
    }

    private static String basic(int code) {
        String sign = Character.toString(code);
        if (isPlain(code) || KEPT.contains(sign)) {
            return sign;
        }
        String bare = Normalizer.normalize(sign, Normalizer.Form.NFKD)
                .codePoints()
                .filter(ShortForm::isPlain)
                .mapToObj(Character::toString)
                .collect(Collectors.joining());
        return bare.isEmpty() ? replaced(code) : bare;
    }

    /** ASCII without the signs that GSM lacks or counts twice. */
    private static boolean isPlain(int code) {
        return code >= 0x20 && code < 0x7F && "[]\\^{|}~`".indexOf(code) < 0;
    }

    private static String replaced(int code) {
        return switch (code) {
            case '[', '{' -> "(";
            case ']', '}' -> ")";
            case '\\', '|' -> "/";
            case '`', '\u2018', '\u2019' -> "'";
            case '\u201C', '\u201D' -> "\"";
            case '^', '~', '\u2013', '\u2014' -> "-";
            default -> "?";
        };
    }
}
