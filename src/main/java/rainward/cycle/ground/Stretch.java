package rainward.cycle.ground;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import rainward.farm.Require;
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
    public static Traces trace(ObservedWeather weather) {
        int hours = weather.air().hours();
        double[][] rainMm = new double[hours][1];
        double[][] peak30MmPerH = new double[hours][1];
        for (int h = 0; h < hours; h++) {
            rainMm[h][0] = weather.rainMm()[h];
            peak30MmPerH[h][0] = weather.rainMm()[h] * Traces.PEAK_30_OVER_HOUR;
        }
        return new Traces(weather.air(), weather.sun(), rainMm, peak30MmPerH);
    }

    /** The weather that came, then each course that it may take from there. */
    public static Traces traces(ObservedWeather came, Traces ahead) {
        Require.that(
                came.air().end().equals(ahead.start()),
                "weather to " + came.air().end() + ", courses from " + ahead.start());
        Traces known = trace(came);
        HourlyAir air = came.air();
        HourlyAir next = ahead.air();
        return new Traces(
                new HourlyAir(
                        air.start(),
                        joined(air.airTempC(), next.airTempC()),
                        joined(air.dewPointC(), next.dewPointC()),
                        joined(air.windMps(), next.windMps()),
                        joined(air.skyCoverFraction(), next.skyCoverFraction())),
                new EvaporationDemand(
                        joined(came.sun().radiationMjPerM2(), ahead.sun().radiationMjPerM2()),
                        joined(
                                came.sun().referenceEvapotranspirationMm(),
                                ahead.sun().referenceEvapotranspirationMm())),
                joined(known.rainMm(), ahead.rainMm()),
                joined(known.peak30MmPerH(), ahead.peak30MmPerH()));
    }

    private static double[] joined(double[] first, double[] then) {
        return DoubleStream.concat(Arrays.stream(first), Arrays.stream(then)).toArray();
    }

    /** Hours of one course, spread over as many as there are then. */
    private static double[][] joined(double[][] first, double[][] then) {
        int count = then[0].length;
        return Stream.concat(
                        Arrays.stream(first).map(hour -> {
                            double[] all = new double[count];
                            Arrays.fill(all, hour[0]);
                            return all;
                        }),
                        Arrays.stream(then))
                .toArray(double[][]::new);
    }

    /** The first so many courses. */
    public static Traces first(Traces all, int count) {
        int kept = Math.min(count, all.count());
        return new Traces(
                all.air(), all.sun(), first(all.rainMm(), kept), first(all.peak30MmPerH(), kept));
    }

    private static double[][] first(double[][] all, int count) {
        return Arrays.stream(all).map(hour -> Arrays.copyOf(hour, count)).toArray(double[][]::new);
    }
}
