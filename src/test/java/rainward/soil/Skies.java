package rainward.soil;

import java.time.Instant;
import java.util.Arrays;
import java.util.SplittableRandom;
import rainward.weather.past.ObservedWeather;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;
import rainward.weather.trace.Traces;

/** Weather for tests: a plain July day over and over, with rain as told. */
public final class Skies {

    public static final Instant START = Instant.parse("2026-07-10T05:00:00Z");

    /** Warm days of 5 mm reference evapotranspiration, half clouded. */
    public static HourlyAir air(Instant start, int hours) {
        double[] temp = new double[hours];
        double[] dew = new double[hours];
        double[] wind = new double[hours];
        double[] sky = new double[hours];
        for (int h = 0; h < hours; h++) {
            temp[h] = 23 + 6 * Math.sin(2 * Math.PI * (h % 24 - 9) / 24.0);
        }
        Arrays.fill(dew, 15);
        Arrays.fill(wind, 2);
        Arrays.fill(sky, 0.4);
        return new HourlyAir(start, temp, dew, wind, sky);
    }

    public static EvaporationDemand sun(int hours) {
        double[] radiation = new double[hours];
        double[] reference = new double[hours];
        for (int h = 0; h < hours; h++) {
            double light = Math.max(0, Math.sin(Math.PI * (h % 24 + 0.5 - 5) / 15));
            radiation[h] = 2.6 * light;
            reference[h] = 5 * light / 9.55;
        }
        return new EvaporationDemand(radiation, reference);
    }

    /** Days without rain but for one soaking on the day told. */
    public static ObservedWeather past(int days, int rainDay, double rainMm) {
        double[] rain = new double[24 * days];
        if (rainDay >= 0) {
            Arrays.fill(rain, 24 * rainDay + 14, 24 * rainDay + 18, rainMm / 4);
        }
        Instant start = START.minusSeconds(3600L * rain.length);
        return new ObservedWeather(air(start, rain.length), sun(rain.length), rain);
    }

    /** The hours from one to another of a past. */
    public static ObservedWeather slice(ObservedWeather past, int from, int to) {
        HourlyAir air = past.air();
        return new ObservedWeather(
                new HourlyAir(
                        air.start().plusSeconds(3600L * from),
                        Arrays.copyOfRange(air.airTempC(), from, to),
                        Arrays.copyOfRange(air.dewPointC(), from, to),
                        Arrays.copyOfRange(air.windMps(), from, to),
                        Arrays.copyOfRange(air.skyCoverFraction(), from, to)),
                new EvaporationDemand(
                        Arrays.copyOfRange(past.sun().radiationMjPerM2(), from, to),
                        Arrays.copyOfRange(past.sun().referenceEvapotranspirationMm(), from, to)),
                Arrays.copyOfRange(past.rainMm(), from, to));
    }

    /** Traces of showers, drawn anew for each. */
    public static Traces showers(int hours, int count, long seed) {
        SplittableRandom sky = new SplittableRandom(seed);
        double[][] rain = new double[hours][count];
        double[][] peak = new double[hours][count];
        for (int h = 0; h < hours; h++) {
            for (int i = 0; i < count; i++) {
                rain[h][i] = sky.nextDouble() < 0.95 ? 0 : Math.pow(sky.nextDouble(), 2) * 20;
                peak[h][i] = rain[h][i] * sky.nextDouble(1, 2);
            }
        }
        return new Traces(air(START, hours), sun(hours), rain, peak);
    }

    /** One trace for each amount, all of it in the four hours from the hour told. */
    public static Traces rains(int hours, int atHour, double... amountsMm) {
        double[][] rain = new double[hours][amountsMm.length];
        double[][] peak = new double[hours][amountsMm.length];
        for (int i = 0; i < amountsMm.length; i++) {
            for (int h = atHour; h < atHour + 4; h++) {
                rain[h][i] = amountsMm[i] / 4;
                peak[h][i] = amountsMm[i] / 4 * 1.668;
            }
        }
        return new Traces(air(START, hours), sun(hours), rain, peak);
    }

    private Skies() {}
}
