package rainward.weather.sky;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Optional;
import rainward.farm.GeoPoint;
import rainward.farm.Window;

/** Sunrise and sunset for people: upper limb on the horizon, usual refraction. */
public final class SunTimes {

    private SunTimes() {}

    /**
     * Daylight of a calendar day, from sunrise to sunset; the whole day under the midnight sun.
     *
     * @param day of the farm
     * @param zone of the farm's days
     * @param place on the ground
     * @return from sunrise to sunset, to a minute below 60 degrees of latitude; empty in polar
     *     night
     */
    public static Optional<Window> daylight(LocalDate day, ZoneId zone, GeoPoint place) {
        ZonedDateTime midnight = day.atStartOfDay(zone);
        var sun = org.shredzone.commons.suncalc.SunTimes.compute()
                .on(midnight)
                .at(place.latitudeDeg(), place.longitudeDeg())
                .oneDay()
                .execute();
        if (sun.isAlwaysDown()) {
            return Optional.empty();
        }
        Instant from = Optional.ofNullable(sun.getRise()).orElse(midnight).toInstant();
        ZonedDateTime next = day.plusDays(1).atStartOfDay(zone);
        Instant to = Optional.ofNullable(sun.getSet()).orElse(next).toInstant();
        return Optional.of(new Window(from, to.isBefore(from) ? next.toInstant() : to));
    }
}
