package rainward.weather.trace;

import java.time.Duration;
import java.time.Instant;
import java.time.Month;
import java.util.Arrays;
import java.util.List;
import java.util.function.LongSupplier;
import java.util.stream.IntStream;
import rainward.farm.GeoPoint;
import rainward.farm.Window;
import rainward.weather.climate.Climate;
import rainward.weather.climate.MonthlyClimate;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainChance;
import rainward.weather.sky.HourlyAir;
import rainward.weather.source.ForecastSeries;

/**
 * Measures the making of traces on invented forecasts: 200 courses of 240 hours at 36 points some
 * kilometres apart, all of it: marginals, rain, air, radiation and evaporation demand.
 */
public final class TraceTimes {

    /** Hourly values that are made, of rain alone. */
    public static final int VALUES = 200 * 240 * 36;

    private static final Instant START = Instant.parse("2026-07-14T12:00:00Z");
    private static final int HOURS = 240;
    private static final int POINTS = 36;
    private static final int ROUNDS = 41;

    private final int periodHours;
    private final List<ForecastSeries> forecasts;
    private final TraceSettings settings;
    private final Climate climate;

    /**
     * Invents the forecasts.
     *
     * @param periodHours length of the periods that the service forecasts rain for [h]
     */
    public TraceTimes(int periodHours) {
        this.periodHours = periodHours;
        this.forecasts = IntStream.range(0, POINTS).mapToObj(this::forecast).toList();
        this.settings = new TraceSettings(200, 1, window(0, HOURS));
        this.climate = new Climate(
                "even",
                250,
                Arrays.stream(Month.values())
                        .map(month -> new MonthlyClimate(month, 0.3, 8, 14, 28))
                        .toList());
    }

    /** Makes them once. */
    public List<PointTraces> make() {
        return TraceMaker.make(forecasts, settings, climate);
    }

    /**
     * The middle one of the later half of some rounds; the earlier half warms the program up.
     *
     * @param nanos a clock, of the processor or of the wall
     */
    public long medianNanos(LongSupplier nanos) {
        long[] took = new long[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            long before = nanos.getAsLong();
            make();
            took[round] = nanos.getAsLong() - before;
        }
        long[] later = Arrays.copyOfRange(took, ROUNDS / 2, ROUNDS);
        Arrays.sort(later);
        return later[later.length / 2];
    }

    private ForecastSeries forecast(int point) {
        int row = point / 6;
        return new ForecastSeries(
                new ForecastSeries.Stamp("invented", START, START),
                new GeoPoint(42 + point % 6 * 0.08, -85 + row * 0.1),
                air(),
                new ForecastSeries.RainOutlook(
                        IntStream.range(0, HOURS / periodHours)
                                .mapToObj(i -> new RainAmount(period(i), i % 7 * 0.1 * periodHours))
                                .toList(),
                        IntStream.range(0, HOURS / periodHours)
                                .mapToObj(i -> new RainChance(period(i), i % 7 * 0.1))
                                .toList()),
                List.of());
    }

    private Window period(int index) {
        return window(index * periodHours, (index + 1) * periodHours);
    }

    private static Window window(int from, int to) {
        return new Window(START.plus(Duration.ofHours(from)), START.plus(Duration.ofHours(to)));
    }

    private static HourlyAir air() {
        return new HourlyAir(START, all(24), all(14), all(3), all(0.3));
    }

    private static double[] all(double value) {
        return IntStream.range(0, 168).mapToDouble(h -> value).toArray();
    }
}
