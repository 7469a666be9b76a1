package rainward.cycle;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import rainward.weather.past.ObservedWeather;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;
import rainward.weather.trace.Traces;

/** Parts of observed weather. */
public final class Stretch {

    private Stretch() {}

    /** The full hours of {@code [from, to)}, both within the weather. */
    public static ObservedWeather of(ObservedWeather whole, Instant from, Instant to) {
        int first = (int) Duration.between(whole.air().start(), from).toHours();
        int end = (int) Duration.between(whole.air().start(), to).toHours();
        HourlyAir air = whole.air();
        EvaporationDemand sun = whole.sun();
        return new ObservedWeather(
                new HourlyAir(
                        from,
                        Arrays.copyOfRange(air.airTempC(), first, end),
                        Arrays.copyOfRange(air.dewPointC(), first, end),
                        Arrays.copyOfRange(air.windMps(), first, end),
                        Arrays.copyOfRange(air.skyCoverFraction(), first, end)),
                new EvaporationDemand(
                        Arrays.copyOfRange(sun.radiationMjPerM2(), first, end),
                        Arrays.copyOfRange(sun.referenceEvapotranspirationMm(), first, end)),
                Arrays.copyOfRange(whole.rainMm(), first, end));
    }

    /** The weather that came as the one trace there is. */
    static Traces trace(ObservedWeather weather) {
        int hours = weather.air().hours();
        double[][] rainMm = new double[hours][1];
        double[][] peak30MmPerH = new double[hours][1];
        for (int h = 0; h < hours; h++) {
            rainMm[h][0] = weather.rainMm()[h];
            peak30MmPerH[h][0] = weather.rainMm()[h] * Traces.PEAK_30_OVER_HOUR;
        }
        return new Traces(weather.air(), weather.sun(), rainMm, peak30MmPerH);
    }
}
