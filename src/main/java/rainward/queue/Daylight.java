package rainward.queue;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import org.shredzone.commons.suncalc.SunTimes;
import rainward.farm.GeoPoint;
import rainward.farm.Window;

/** The light of a day at a place. */
public final class Daylight {

    private Daylight() {}

    /**
     * From sunrise to sunset.
     *
     * @param place where
     * @param date the farm's calendar day
     * @param zone of the farm
     * @return empty where the sun does not rise on that day; the whole day where it does not set
     */
    public static Optional<Window> of(GeoPoint place, LocalDate date, ZoneId zone) {
        SunTimes sun = SunTimes.compute()
                .on(date)
                .timezone(zone)
                .at(place.latitudeDeg(), place.longitudeDeg())
                .oneDay()
                .execute();
        if (sun.isAlwaysDown()) {
            return Optional.empty();
        }
        Instant dayStart = date.atStartOfDay(zone).toInstant();
        Instant dayEnd = date.plusDays(1).atStartOfDay(zone).toInstant();
        Instant rise =
                Optional.ofNullable(sun.getRise()).map(z -> z.toInstant()).orElse(dayStart);
        Instant set = Optional.ofNullable(sun.getSet()).map(z -> z.toInstant()).orElse(dayEnd);
        return Optional.of(new Window(rise, set.isAfter(rise) ? set : dayEnd));
    }
}
