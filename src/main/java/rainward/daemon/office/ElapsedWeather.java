package rainward.daemon.office;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import rainward.farm.Window;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainShares;
import rainward.weather.sky.HourlyAir;
import rainward.weather.source.ForecastSeries;

/**
 * What had been forecast for the hours now past, one forecast after the other: stands in for air
 * and rain that nobody observed.
 *
 * @param air hour by hour, without gaps
 * @param rain hour by hour
 */
public record ElapsedWeather(HourlyAir air, List<RainAmount> rain) {

    private static final int HOURS_KEPT = 24 * 60;

    public ElapsedWeather {
        rain = List.copyOf(rain);
    }

    /** The hours of a forecast before a moment. */
    static ElapsedWeather of(ForecastSeries forecast, Instant now) {
        HourlyAir air = forecast.hourly();
        int hours = (int)
                Math.max(0, Math.min(air.hours(), ChronoUnit.HOURS.between(air.start(), now)));
        double[] rainMm = RainShares.hourlyMm(forecast.rain().amounts(), air.start(), hours);
        List<RainAmount> rain = new ArrayList<>();
        for (int h = 0; h < hours; h++) {
            Instant from = air.start().plus(Duration.ofHours(h));
            rain.add(new RainAmount(new Window(from, from.plus(Duration.ofHours(1))), rainMm[h]));
        }
        return new ElapsedWeather(cut(air, 0, hours), rain);
    }

    /** This, gone on with later hours; where they leave a gap the earlier ones are given up. */
    ElapsedWeather then(ElapsedWeather later) {
        int known = air.hours();
        long shift = Duration.between(air.start(), later.air.start()).toHours();
        if (later.air.hours() == 0 || shift + later.air.hours() <= known) {
            return this;
        }
        if (shift > known || shift < 0 || known == 0) {
            return later;
        }
        int skip = (int) (known - shift);
        List<RainAmount> all = new ArrayList<>(rain);
        all.addAll(later.rain.subList(skip, later.rain.size()));
        HourlyAir joined = joined(air, cut(later.air, skip, later.air.hours()));
        int drop = Math.max(0, joined.hours() - HOURS_KEPT);
        return new ElapsedWeather(cut(joined, drop, joined.hours()), all.subList(drop, all.size()));
    }

    private static HourlyAir cut(HourlyAir air, int from, int to) {
        return new HourlyAir(
                air.start().plus(Duration.ofHours(from)),
                Arrays.copyOfRange(air.airTempC(), from, to),
                Arrays.copyOfRange(air.dewPointC(), from, to),
                Arrays.copyOfRange(air.windMps(), from, to),
                Arrays.copyOfRange(air.skyCoverFraction(), from, to));
    }

    private static HourlyAir joined(HourlyAir first, HourlyAir second) {
        return new HourlyAir(
                first.start(),
                joined(first.airTempC(), second.airTempC()),
                joined(first.dewPointC(), second.dewPointC()),
                joined(first.windMps(), second.windMps()),
                joined(first.skyCoverFraction(), second.skyCoverFraction()));
    }

    private static double[] joined(double[] first, double[] second) {
        return DoubleStream.concat(Arrays.stream(first), Arrays.stream(second)).toArray();
    }
}
