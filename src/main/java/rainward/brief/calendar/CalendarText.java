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
import java.util.Date;
import rainward.brief.Orders.StageLine;
import rainward.farm.UnitSystem;

/**
 * The work of the order as a calendar (RFC 5545), to be attached to a mail or fetched as a feed.
 * Times are in UTC, which every calendar shows in its own zone. There is no METHOD: nobody is
 * invited, and RFC 5546 would ask for an organizer.
 */
public final class CalendarText {

    /** Longest line, RFC 5545 3.1. */
    private static final int OCTETS = 75;

    private CalendarText() {}

    /** The text of a calendar. */
    public static String of(WorkCalendar work, UnitSystem units) {
        ICalendar calendar = new ICalendar();
        calendar.setProductId("-//rainward//rainward//EN");
        work.events().forEach(event -> calendar.addEvent(event(event, units)));
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

    private static VEvent event(WorkEvent work, UnitSystem units) {
        StageLine stage = work.stage();
        VEvent event = new VEvent();
        event.setUid(work.uid());
        event.setSequence(work.version().sequence());
        event.setDateTimeStamp(Date.from(work.version().changedAt()));
        event.setDateStart(Date.from(stage.work().from()), true);
        event.setDateEnd(Date.from(stage.work().to()), true);
        event.setSummary(stage.stage() + work.mix().map(mix -> ": " + mix).orElse("") + ", "
                + work.place().field());
        event.setLocation(work.place().property());
        event.setDescription(stage.hands().person() + ", " + stage.hands().machine() + ". "
                + work.place().property() + ", " + units.area(work.place().areaHa()) + ".");
        event.setStatus(work.version().cancelled() ? Status.cancelled() : Status.confirmed());
        return event;
    }
}
