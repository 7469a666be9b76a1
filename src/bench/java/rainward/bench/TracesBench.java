package rainward.bench;

import java.time.Duration;
import java.time.Instant;
import java.time.Month;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import rainward.farm.GeoPoint;
import rainward.farm.Window;
import rainward.weather.climate.Climate;
import rainward.weather.climate.MonthlyClimate;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainChance;
import rainward.weather.sky.HourlyAir;
import rainward.weather.source.ForecastSeries;
import rainward.weather.trace.PointTraces;
import rainward.weather.trace.TraceMaker;
import rainward.weather.trace.TraceSettings;

/**
 * 200 traces of 240 hours at 36 points: 1,728,000 hourly values; a millisecond is 0.58 ns a value.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgs = "-Xmx512m")
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class TracesBench {

    private static final Instant START = Instant.parse("2026-07-14T12:00:00Z");
    private static final int HOURS = 240;
    private static final int POINTS = 36;

    /** Length of the periods that the service forecasts rain for [h]. */
    @Param({"6", "1"})
    public int periodHours;

    private List<ForecastSeries> forecasts;
    private TraceSettings settings;
    private Climate climate;

    /** Invented forecasts for points some kilometres apart. */
    @Setup
    public void invent() {
        forecasts = IntStream.range(0, POINTS).mapToObj(this::forecast).toList();
        settings = new TraceSettings(200, 1, window(0, HOURS));
        climate = new Climate(
                "even",
                250,
                Arrays.stream(Month.values())
                        .map(month -> new MonthlyClimate(month, 0.3, 8, 14, 28))
                        .toList());
    }

    private ForecastSeries forecast(int point) {
        return new ForecastSeries(
                new ForecastSeries.Stamp("invented", START, START),
                new GeoPoint(42 + point % 6 * 0.08, -85 + point / 6 * 0.1),
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

    /** All of it: marginals, rain, air, radiation and evaporation demand. */
    @Benchmark
    public List<PointTraces> make() {
        return TraceMaker.make(forecasts, settings, climate);
    }
}
