package rainward.weather.sky;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import rainward.farm.GeoPoint;
import rainward.farm.Window;

/**
 * Where the sun stands and what it sends to the top of the air, by FAO-56 chapter 3 (Allen et al.
 * 1998), which ASCE-EWRI 2005 shares. Between the polar circles; the one-term declination is up to
 * a degree off, which is what the published demand tables carry too. Rise and set for people come
 * from {@link SunTimes}.
 */
public final class SolarGeometry {

    /** Solar constant, FAO-56 eq. 21 [MJ/m2/min]. */
    private static final double SOLAR_CONSTANT = 0.0820;

    private static final double HALF_HOUR_RAD = Math.PI / 24;

    private SolarGeometry() {}

    /** Inverse relative distance to the sun, FAO-56 eq. 23 [-]. */
    static double inverseDistance(int dayOfYear) {
        return 1 + 0.033 * Math.cos(2 * Math.PI * dayOfYear / 365);
    }

    /** Solar declination, FAO-56 eq. 24 [rad]. */
    static double declinationRad(int dayOfYear) {
        return 0.409 * Math.sin(2 * Math.PI * dayOfYear / 365 - 1.39);
    }

    /** Hour angle of sunset, FAO-56 eq. 25; 0 in polar night, pi in polar day [rad]. */
    static double sunsetAngleRad(double latitudeRad, double declinationRad) {
        double cosine = -Math.tan(latitudeRad) * Math.tan(declinationRad);
        return Math.acos(Math.max(-1, Math.min(1, cosine)));
    }

    /** Daylight hours, FAO-56 eq. 34 [h]. */
    static double daylightHours(double latitudeRad, int dayOfYear) {
        return 24 / Math.PI * sunsetAngleRad(latitudeRad, declinationRad(dayOfYear));
    }

    /** Extraterrestrial radiation of a day, FAO-56 eq. 21 [MJ/m2]. */
    public static double extraterrestrialDayMjPerM2(double latitudeRad, int dayOfYear) {
        double declination = declinationRad(dayOfYear);
        double sunset = sunsetAngleRad(latitudeRad, declination);
        return 24
                * 60
                / Math.PI
                * beam(dayOfYear)
                * integral(latitudeRad, declination, -sunset, sunset)
                / 2;
    }

    /**
     * Extraterrestrial radiation of an hour, FAO-56 eq. 28 to 33, the hour angles held within
     * sunrise and sunset as in ASCE-EWRI 2005 eq. 55 and 56.
     *
     * @param hourStart start of the hour
     * @param place on the ground
     * @return on the flat [MJ/m2]
     */
    static double extraterrestrialHourMjPerM2(Instant hourStart, GeoPoint place) {
        Sun sun = Sun.at(hourStart.plusSeconds(1800), place);
        double first = hold(sun.hourAngleRad - HALF_HOUR_RAD, sun.sunsetRad);
        double last = hold(sun.hourAngleRad + HALF_HOUR_RAD, sun.sunsetRad);
        if (last <= first) {
            return 0;
        }
        double over = integral(sun.latitudeRad, sun.declinationRad, first, last);
        return Math.max(0, 12 * 60 / Math.PI * beam(sun.dayOfYear) * over);
    }

    /**
     * Centre of the sun above a flat horizon without refraction: some minutes shorter than
     * {@link SunTimes#daylight}, at a hundredth of the cost.
     *
     * @param day of any zone near the place
     * @param place on the ground
     * @return of no length in polar night, 24 hours in polar day
     */
    public static Window daylight(LocalDate day, GeoPoint place) {
        int dayOfYear = day.getDayOfYear();
        double noonHour = 12 - place.longitudeDeg() / 15 - Sun.seasonalHours(dayOfYear);
        Instant noon = day.atStartOfDay(ZoneOffset.UTC)
                .toInstant()
                .plusSeconds(Math.round(3600 * noonHour));
        double half = daylightHours(Math.toRadians(place.latitudeDeg()), dayOfYear) / 2;
        long halfS = Math.round(3600 * half);
        return new Window(noon.minusSeconds(halfS), noon.plusSeconds(halfS));
    }

    private static double beam(int dayOfYear) {
        return SOLAR_CONSTANT * inverseDistance(dayOfYear);
    }

    private static double integral(double latitude, double declination, double from, double to) {
        return (to - from) * Math.sin(latitude) * Math.sin(declination)
                + Math.cos(latitude) * Math.cos(declination) * (Math.sin(to) - Math.sin(from));
    }

    private static double hold(double angle, double sunset) {
        return Math.max(-sunset, Math.min(sunset, angle));
    }

    /** The sun over a place at an instant, by true solar time (FAO-56 eq. 31 to 33). */
    private record Sun(
            int dayOfYear,
            double latitudeRad,
            double declinationRad,
            double sunsetRad,
            double hourAngleRad) {

        static Sun at(Instant instant, GeoPoint place) {
            double shiftS = place.longitudeDeg() * 240;
            var local = instant.plusSeconds(Math.round(shiftS)).atOffset(ZoneOffset.UTC);
            int day = local.getDayOfYear();
            double clock = local.toLocalTime().toSecondOfDay() / 3600.0;
            double angle = Math.PI / 12 * (clock + seasonalHours(day) - 12);
            double latitude = Math.toRadians(place.latitudeDeg());
            double declination = SolarGeometry.declinationRad(day);
            double sunset = SolarGeometry.sunsetAngleRad(latitude, declination);
            return new Sun(day, latitude, declination, sunset, angle);
        }

        /** Seasonal correction for solar time, FAO-56 eq. 32 and 33 [h]. */
        private static double seasonalHours(int dayOfYear) {
            double b = 2 * Math.PI * (dayOfYear - 81) / 364;
            return 0.1645 * Math.sin(2 * b) - 0.1255 * Math.cos(b) - 0.025 * Math.sin(b);
        }
    }
}
