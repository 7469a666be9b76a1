package rainward.farm;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/**
 * Days and times as the reader says them, in the farm's zone: twelve hours with US units,
 * twenty-four with metric ones. In the hour that comes twice when clocks go back, the zone's name
 * tells which.
 *
 * @param zone of the farm's days
 * @param units that go with the reader's way of telling the time
 */
public record DayClock(ZoneId zone, UnitSystem units) {

    /** Up to here a weekday says which day is meant; from here on it could be either of two. */
    private static final int DAYS_OF_ONE_NAME = 6;

    /** For instance {@code 6:30 am} or {@code 06:30}. */
    public String time(Instant instant) {
        ZonedDateTime at = instant.atZone(zone);
        if (twelveHours() && at.getMinute() == 0 && at.getHour() % 12 == 0) {
            return at.getHour() == 0 ? "midnight" : "noon";
        }
        return bare(at) + halfOfDay(at) + which(at);
    }

    /** For instance {@code 6:30-8:10 am} or {@code 06:30-08:10}. */
    public String span(Window window) {
        ZonedDateTime from = window.from().atZone(zone);
        ZonedDateTime to = window.to().atZone(zone);
        boolean sameHalf = from.toLocalDate().equals(to.toLocalDate())
                && halfOfDay(from).equals(halfOfDay(to))
                && which(from).isEmpty();
        String start = sameHalf ? bare(from) : time(window.from());
        boolean sameDay = to.toLocalDate().equals(from.toLocalDate())
                || to.equals(from.toLocalDate().plusDays(1).atStartOfDay(zone));
        String end = sameDay ? time(window.to()) : dayTime(window.to());
        return start + "-" + end;
    }

    /** For instance {@code Thu, Jul 16} or {@code Thu 16 Jul}. */
    public String day(LocalDate date) {
        return format(twelveHours() ? "EEE, MMM d" : "EEE d MMM").format(date);
    }

    /** For instance {@code Thursday, July 16} or {@code Thursday 16 July}. */
    public String longDay(LocalDate date) {
        return format(twelveHours() ? "EEEE, MMMM d" : "EEEE d MMMM").format(date);
    }

    /** For instance {@code Thu 6:30 am}. */
    public String dayTime(Instant instant) {
        return weekday(instant) + " " + time(instant);
    }

    /** For instance {@code Thu, Jul 16 6:30 am}; where the day may be weeks away. */
    public String dateTime(Instant instant) {
        return day(date(instant)) + " " + time(instant);
    }

    /**
     * As much as says which day is meant: {@link #dayTime}, {@link #dateTime}, or with its year,
     * for instance {@code Fri, Jul 16, 2027 6:30 am}.
     *
     * @param asOf when it is said
     */
    public String near(Instant instant, Instant asOf) {
        LocalDate day = date(instant);
        if (Math.abs(ChronoUnit.DAYS.between(date(asOf), day)) <= DAYS_OF_ONE_NAME) {
            return dayTime(instant);
        }
        boolean sameYear = day.getYear() == date(asOf).getYear();
        return sameYear ? dateTime(instant) : dayOfYear(day) + " " + time(instant);
    }

    private String dayOfYear(LocalDate date) {
        return day(date) + (twelveHours() ? ", " : " ") + date.getYear();
    }

    /** For instance {@code Thu 6:30-8:10 am}. */
    public String daySpan(Window window) {
        return weekday(window.from()) + " " + span(window);
    }

    /** For instance {@code Thu}. */
    public String weekday(Instant instant) {
        return format("EEE").format(instant.atZone(zone));
    }

    public LocalDate date(Instant instant) {
        return instant.atZone(zone).toLocalDate();
    }

    /** The day as half-open stretch; 23, 24 or 25 hours. */
    public Window wholeDay(LocalDate date) {
        return Window.ofDay(date, zone);
    }

    private boolean twelveHours() {
        return units == UnitSystem.US_CUSTOMARY;
    }

    private String bare(ZonedDateTime at) {
        return format(twelveHours() ? "h:mm" : "HH:mm").format(at);
    }

    private String halfOfDay(ZonedDateTime at) {
        if (!twelveHours()) {
            return "";
        }
        return at.getHour() < 12 ? " am" : " pm";
    }

    private String which(ZonedDateTime at) {
        boolean twice = zone.getRules().getValidOffsets(at.toLocalDateTime()).size() > 1;
        return twice ? format(" zzz").format(at) : "";
    }

    private static DateTimeFormatter format(String pattern) {
        return DateTimeFormatter.ofPattern(pattern, Locale.US);
    }
}
