package rainward.daemon.office;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import rainward.brief.Orders;
import rainward.brief.calendar.CalendarText;
import rainward.brief.calendar.WorkCalendar;
import rainward.brief.making.BriefMaker;
import rainward.cycle.Cycle;
import rainward.farm.Window;
import rainward.store.Books;

/** Where the calendar of the work is kept in step with the order in force. */
public final class CalendarDesk {

    private static final String CALENDAR = "calendar";

    private final Office office;

    public CalendarDesk(Office office) {
        this.office = office;
    }

    /** Brings the calendar up to an order that is given out, in the same transaction. */
    WorkCalendar follow(Books books, Cycle.Result result) {
        Instant at = result.outlook().asOf();
        WorkCalendar next = kept(books).after(orders(result, at), at);
        books.lastKnown().put(CALENDAR, at, next);
        return next;
    }

    /** The calendar as it would be with the order of a round; nothing is written. */
    public WorkCalendar with(Cycle.Result result) {
        Instant at = result.outlook().asOf();
        return office.store().read(CalendarDesk::kept).after(orders(result, at), at);
    }

    /** The feed: the calendar of the order in force, of some machines or of all. */
    public String feed(Optional<Set<String>> machines) {
        WorkCalendar all = office.store().read(CalendarDesk::kept);
        return CalendarText.of(
                machines.map(all::of).orElse(all), office.settings().farm().units());
    }

    /** The same of one person. */
    public String feedOf(String person) {
        WorkCalendar all = office.store().read(CalendarDesk::kept);
        return CalendarText.of(all.ofPerson(person), office.settings().farm().units());
    }

    private static WorkCalendar kept(Books books) {
        return books.lastKnown().find(CALENDAR, WorkCalendar.class).orElse(WorkCalendar.EMPTY);
    }

    private Orders orders(Cycle.Result result, Instant at) {
        var day = at.atZone(office.zone()).toLocalDate();
        return BriefMaker.orders(result.outlook(), Window.ofDay(day, office.zone()));
    }
}
