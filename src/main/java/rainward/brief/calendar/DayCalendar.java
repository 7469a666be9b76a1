package rainward.brief.calendar;

import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.io.text.ICalWriter;
import biweekly.property.Status;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Date;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import rainward.brief.Brief;
import rainward.brief.Orders.FieldLine;
import rainward.brief.Orders.StageLine;
import rainward.brief.words.OrderWords;
import rainward.brief.words.Reader;
import rainward.farm.UnitSystem;

/**
 * The work of the order as a calendar (RFC 5545). A stage of a field keeps its UID from brief to
 * brief and each brief counts SEQUENCE up, so that a changed order moves events and doubles none.
 * Times are in UTC, which every calendar shows in its own zone. There is no METHOD: nobody is
 * invited, and RFC 5546 would ask for an organizer.
 */
public final class DayCalendar {

    /** Longest line, RFC 5545 3.1. */
    private static final int OCTETS = 75;

    private static final Instant COUNTED_FROM = Instant.parse("2020-01-01T00:00:00Z");

    private final Brief brief;
    private final OrderWords order;
    private final Instant writtenAt;
    private final Map<String, Integer> seen = new LinkedHashMap<>();

    private DayCalendar(Brief brief, UnitSystem units) {
        this.brief = brief;
        this.order = new OrderWords(brief, new Reader(brief.heading().zone(), units));
        this.writtenAt = brief.heading().written().at();
    }

    /** All stages of the fields that are worked on the day of the brief. */
    public static String of(Brief brief, UnitSystem units) {
        return new DayCalendar(brief, units).write();
    }

    private String write() {
        ICalendar calendar = new ICalendar();
        calendar.setProductId("-//rainward//rainward//EN");
        for (FieldLine line : brief.orders().today()) {
            line.stages().forEach(stage -> calendar.addEvent(event(line, stage)));
        }
        return folded(unfolded(calendar));
    }

    private static String unfolded(ICalendar calendar) {
        StringWriter out = new StringWriter();
        try (ICalWriter writer = new ICalWriter(out, ICalVersion.V2_0)) {
            writer.getVObjectWriter().getFoldedLineWriter().setLineLength(null);
            writer.write(calendar);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    /** RFC 5545 3.1 counts octets, the writer counts characters; a character is never cut. */
    private static String folded(String text) {
        StringBuilder out = new StringBuilder();
        int octets = 0;
        for (int sign : text.codePoints().toArray()) {
            int more = Character.toString(sign).getBytes(StandardCharsets.UTF_8).length;
            if (sign != '\r' && sign != '\n' && octets + more > OCTETS) {
                out.append("\r\n ");
                octets = 1;
            }
            out.appendCodePoint(sign);
            octets = sign == '\n' ? 0 : octets + more;
        }
        return out.toString();
    }

    private VEvent event(FieldLine line, StageLine stage) {
        VEvent event = new VEvent();
        event.setUid(uid(line, stage));
        event.setSequence(sequence());
        event.setDateTimeStamp(Date.from(writtenAt));
        event.setDateStart(Date.from(stage.work().from()), true);
        event.setDateEnd(Date.from(stage.work().to()), true);
        event.setSummary(OrderWords.what(stage, line) + ", " + line.place().field());
        event.setLocation(line.place().property());
        event.setDescription(OrderWords.who(stage) + ". " + order.place(line) + "."
                + (line.reason().isEmpty() ? "" : " " + line.reason()));
        event.setStatus(Status.confirmed());
        return event;
    }

    /** Minutes since 2020: grows from brief to brief and fits the number that RFC 5545 allows. */
    private int sequence() {
        return Math.toIntExact(Duration.between(COUNTED_FROM, writtenAt).toMinutes());
    }

    /** Field, stage, stretch of it and year; the name is spelled in hexadecimal to be safe. */
    private String uid(FieldLine line, StageLine stage) {
        LocalDate day = brief.heading().day();
        String key = line.place().field() + '/' + stage.stage() + '/' + day.getYear();
        int stretch = seen.merge(key, 1, Integer::sum);
        String hex = HexFormat.of().formatHex(key.getBytes(StandardCharsets.UTF_8));
        return hex + (stretch > 1 ? "-" + stretch : "") + "@rainward";
    }
}
