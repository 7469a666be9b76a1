package rainward.weather.trace;

import java.time.Duration;
import java.time.Instant;
import java.time.Month;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import rainward.farm.GeoPoint;
import rainward.farm.Window;
import rainward.weather.climate.Climate;
import rainward.weather.climate.MonthlyClimate;
import rainward.weather.marginal.RainMarginals;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainChance;
import rainward.weather.sky.HourlyAir;
import rainward.weather.source.ForecastSeries;

/** Weather for tests: an invented July in southern Michigan. */
public final class Skies {

    public static final Instant START = Instant.parse("2026-07-14T09:00:00Z");

    /** A field of the demo's country; nothing is special about it. */
    public static final GeoPoint FARM = new GeoPoint(42.2, -84.9);

    /**
     * Every month the same, so that a test can reckon by hand: 0.3 wet days of 8 mm, 14 to 28 C.
     */
    public static final Climate EVEN_YEAR = new Climate(
            "even",
            250,
            Arrays.stream(Month.values())
                    .map(month -> new MonthlyClimate(month, 0.3, 8, 14, 28))
                    .toList());

    private Skies() {}

    public static Window hours(int from, int to) {
        return new Window(START.plus(Duration.ofHours(from)), START.plus(Duration.ofHours(to)));
    }

    public static RainAmount amount(int from, int to, double mm) {
        return new RainAmount(hours(from, to), mm);
    }

    public static RainChance chance(int from, int to, double probability) {
        return new RainChance(hours(from, to), probability);
    }

    public static HourlyAir air(int hours) {
        return new HourlyAir(
                START,
                IntStream.range(0, hours).mapToDouble(Skies::warmAfternoonC).toArray(),
                all(hours, 12),
                all(hours, 2.5),
                all(hours, 0.4));
    }

    private static double warmAfternoonC(int hour) {
        return 21 + 7 * Math.sin(2 * Math.PI * (hour - 5) / 24);
    }

    public static double[] all(int hours, double value) {
        double[] same = new double[hours];
        Arrays.fill(same, value);
        return same;
    }

    public static ForecastSeries forecast(
            GeoPoint point, List<RainAmount> amounts, List<RainChance> chances) {
        return new ForecastSeries(
                new ForecastSeries.Stamp("invented", START, START),
                point,
                air(168),
                new ForecastSeries.RainOutlook(amounts, chances),
                List.of());
    }

    public static RainMarginals marginals(
            int hours, List<RainAmount> amounts, List<RainChance> chances) {
        return RainMarginals.of(forecast(FARM, amounts, chances), hours(0, hours), EVEN_YEAR);
    }

    /** Ten days of quarter days, each with its chance and amount. */
    static ForecastSeries changeable(GeoPoint point) {
        return changeable(point, 6);
    }

    /** Ten days of periods of so many hours, each with its chance and amount. */
    static ForecastSeries changeable(GeoPoint point, int hours) {
        double[] probability = {0, 0.2, 0.55, 0.7, 0.1, 0.35, 0.9, 0.05};
        double[] mm = {0, 0.6, 4, 9, 0.2, 1.5, 14, 0.1};
        IntStream periods = IntStream.range(0, 240 / hours);
        List<Integer> starts = periods.mapToObj(i -> i * hours).toList();
        return forecast(
                point,
                starts.stream()
                        .map(from -> amount(from, from + hours, mm[from / hours % mm.length]))
                        .toList(),
                starts.stream()
                        .map(from ->
                                chance(from, from + hours, probability[from / hours % mm.length]))
                        .toList());
    }
}
