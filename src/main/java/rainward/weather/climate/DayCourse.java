package rainward.weather.climate;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import rainward.farm.GeoPoint;
import rainward.farm.Window;
import rainward.weather.sky.AirPhysics;
import rainward.weather.sky.HourlyAir;
import rainward.weather.sky.SkyRadiation;
import rainward.weather.sky.SolarGeometry;

/**
 * Days spread to hours: temperature by Parton and Logan 1981; dew point from mean humidity (FAO-56
 * eq. 19), else the night's lowest (FAO-56 eq. 48); wind steady, 2 m/s where unknown (FAO-56,
 * missing wind); sky cover such that the hours' radiation adds up to the day's, which without a
 * measurement comes from the range of temperature (FAO-56 eq. 50).
 */
public final class DayCourse {

    /** Wind at 2 m where none is known, FAO-56 chapter 3, estimating missing wind [m/s]. */
    public static final double UNKNOWN_WIND_MPS = 2;

    private final ZoneId zone;
    private final GeoPoint place;
    private final double elevationM;
    private final Function<LocalDate, DailyWeather> days;
    private final Function<LocalDate, TempRange> usual;
    private final Map<LocalDate, Day> made = new HashMap<>();

    /**
     * A course of days.
     *
     * @param zone whose calendar days they are
     * @param site place and region
     * @param days what is known of any day asked for
     */
    public DayCourse(ZoneId zone, Site site, Function<LocalDate, DailyWeather> days) {
        this.zone = zone;
        this.place = site.place;
        this.elevationM = site.climate.elevationM();
        this.days = days;
        this.usual = day -> {
            MonthlyClimate month = site.climate.on(day);
            return new TempRange(month.airTempMinC(), month.airTempMaxC());
        };
    }

    /** A place and the region whose climate it has. */
    public record Site(GeoPoint place, Climate climate) {}

    /** Air, wind and sky of hours that begin at {@code start}. */
    public HourlyAir over(Instant start, int hours) {
        double[] temp = new double[hours];
        double[] dew = new double[hours];
        double[] wind = new double[hours];
        double[] sky = new double[hours];
        for (int h = 0; h < hours; h++) {
            Instant middle = start.plus(Duration.ofHours(h)).plusSeconds(1800);
            Day day = day(middle.atZone(zone).toLocalDate());
            temp[h] = tempC(middle, day);
            dew[h] = Math.min(temp[h], day.dewPointC);
            wind[h] = day.windMps;
            sky[h] = day.skyCoverFraction;
        }
        return new HourlyAir(start, temp, dew, wind, sky);
    }

    private double tempC(Instant instant, Day today) {
        double sinceRise = hours(today.light.from(), instant);
        double length = hours(today.light.from(), today.light.to());
        if (PartonLogan.byDay(sinceRise, length)) {
            return PartonLogan.dayC(today.range, sinceRise, length);
        }
        return sinceRise < 0
                ? night(instant, day(today.date.minusDays(1)), today)
                : night(instant, today, day(today.date.plusDays(1)));
    }

    private double night(Instant instant, Day evening, Day morning) {
        double length = hours(evening.light.from(), evening.light.to());
        double sunset = PartonLogan.dayC(evening.range, length, length);
        double dark = Math.max(0.1, hours(evening.light.to(), morning.light.from()));
        double since = Math.max(0, hours(evening.light.to(), instant));
        return PartonLogan.nightC(morning.range.airTempMinC(), sunset, since, dark);
    }

    private Day day(LocalDate date) {
        return made.computeIfAbsent(date, this::make);
    }

    private Day make(LocalDate date) {
        DailyWeather known = days.apply(date);
        TempRange range = known.temps().orElseGet(() -> usual.apply(date));
        Window light = SolarGeometry.daylight(date, place);
        double dew = known.sky().humidityFraction().isPresent()
                ? humidDewPointC(range, known.sky().humidityFraction().getAsDouble())
                : range.airTempMinC();
        double wind = known.sky().windMps().orElse(UNKNOWN_WIND_MPS);
        return new Day(date, light, range, dew, wind, skyCover(date, known, range));
    }

    private static double humidDewPointC(TempRange range, double humidityFraction) {
        double saturation = AirPhysics.daySaturationKpa(range.airTempMinC(), range.airTempMaxC());
        return Math.max(-40, AirPhysics.dewPointC(humidityFraction * saturation));
    }

    private double skyCover(LocalDate date, DailyWeather known, TempRange range) {
        double top = SolarGeometry.extraterrestrialDayMjPerM2(
                Math.toRadians(place.latitudeDeg()), date.getDayOfYear());
        double radiation = known.sky()
                .radiationMjPerM2()
                .orElseGet(() ->
                        SkyRadiation.fromTemperatureRangeMjPerM2(range.spanC(), top, elevationM));
        double clear = SkyRadiation.clearSkyMjPerM2(top, elevationM);
        return clear <= 0 ? 0.5 : SkyRadiation.skyCoverFraction(radiation / clear);
    }

    private static double hours(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / 3_600_000.0;
    }

    private record Day(
            LocalDate date,
            Window light,
            TempRange range,
            double dewPointC,
            double windMps,
            double skyCoverFraction) {}
}
