package rainward.cycle;

import java.time.Duration;
import java.time.Instant;
import java.time.Month;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.LongSupplier;
import java.util.stream.IntStream;
import rainward.farm.GeoPoint;
import rainward.farm.Machine.MassClass;
import rainward.farm.Mix;
import rainward.farm.SeedingMethod;
import rainward.farm.SoilTexture;
import rainward.farm.Window;
import rainward.soil.FieldSoil;
import rainward.soil.SoilRun;
import rainward.soil.SoilState;
import rainward.soil.SurfaceCondition;
import rainward.soil.column.SoilColumn;
import rainward.stand.SeedPlacement;
import rainward.stand.SeedingConditions;
import rainward.stand.SeedingHours;
import rainward.stand.StandCase;
import rainward.stand.model.StandModel;
import rainward.weather.climate.Climate;
import rainward.weather.climate.MonthlyClimate;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainChance;
import rainward.weather.sky.HourlyAir;
import rainward.weather.source.ForecastSeries;
import rainward.weather.trace.PointTraces;
import rainward.weather.trace.TraceMaker;
import rainward.weather.trace.TraceSettings;
import rainward.weather.trace.Traces;

/**
 * Measures soil and stand on invented fields: 200 traces of 240 hours, the whole column, every
 * seeding hour of a week. Fields differ in texture, slope and mix.
 */
public final class PhysicsBench {

    private static final Instant START = Instant.parse("2026-07-14T12:00:00Z");
    private static final int HOURS = 240;
    private static final int TRACES = 200;
    private static final int POINTS = 12;
    private static final int WARM_UP_FIELDS = 400;

    private static final List<SoilTexture> TEXTURES = List.of(
            new SoilTexture(0.65, 0.10, 2.5),
            new SoilTexture(0.40, 0.20, 2.5),
            new SoilTexture(0.20, 0.15, 2.5),
            new SoilTexture(0.30, 0.35, 2.5));

    private final LongSupplier nanos;
    private final List<Mix> mixes;

    /**
     * Takes a clock from outside; the physics knows none.
     *
     * @param nanos of the processor or of the wall
     * @param mixes sown in turn; at least one
     */
    public PhysicsBench(LongSupplier nanos, List<Mix> mixes) {
        this.nanos = nanos;
        this.mixes = List.copyOf(mixes);
    }

    /**
     * Figures of one run.
     *
     * @param physicsMsPerField soil and stand of one field, median over the fields of the last row
     * @param tracesMs weather of one property, median [ms]
     * @param byFields cost of a field when so many are reckoned one after the other
     */
    public record Figures(double physicsMsPerField, double tracesMs, List<Row> byFields) {

        public Figures {
            byFields = List.copyOf(byFields);
        }
    }

    /**
     * One number of fields.
     *
     * @param fields reckoned
     * @param msPerField all of it over the number of fields [ms]
     */
    public record Row(int fields, double msPerField) {}

    /**
     * Reckons fields after some that only warm the program up.
     *
     * @param counts how many fields, one row each
     */
    public Figures run(List<Integer> counts) {
        List<Double> traceMs = new ArrayList<>();
        List<Traces> weather = new ArrayList<>();
        for (int round = 0; round < 10; round++) {
            long before = nanos.getAsLong();
            weather = weather();
            traceMs.add((nanos.getAsLong() - before) / 1e6 / POINTS);
        }
        int most = counts.stream().mapToInt(count -> count).max().orElse(0);
        fields(weather, Math.min(WARM_UP_FIELDS, 10 * most));
        List<Row> rows = new ArrayList<>();
        List<Double> last = List.of();
        for (int count : counts) {
            last = fields(weather, count);
            double all = last.stream().mapToDouble(ms -> ms).sum();
            rows.add(new Row(count, all / count));
        }
        return new Figures(median(last), median(traceMs), rows);
    }

    private List<Double> fields(List<Traces> weather, int count) {
        List<Double> each = new ArrayList<>();
        for (int field = 0; field < count; field++) {
            long before = nanos.getAsLong();
            reckon(field, weather.get(field % weather.size()));
            each.add((nanos.getAsLong() - before) / 1e6);
        }
        return each;
    }

    private void reckon(int field, Traces traces) {
        SoilTexture texture = TEXTURES.get(field % TEXTURES.size());
        Mix mix = mixes.get(field % mixes.size());
        double slope = field % 9 * 0.01;
        SoilColumn column = new SoilColumn(new FieldSoil(texture, slope, SurfaceCondition.FIRMED));
        SoilState now = column.unknown(START, 22);
        double depthCm = SeedPlacement.depthCm(mix, SeedingMethod.ROLLED);
        SoilRun soil =
                column.run(now, traces, List.of(depthCm), MassClass.MEDIUM).get(0);
        SeedingConditions bed =
                new SeedingConditions(SeedingMethod.ROLLED, texture, slope, true, 0);
        SeedingHours hours = new SeedingHours(START, CycleInput.PLAN_HOURS, ZoneOffset.UTC);
        StandModel.usual().outlook(new StandCase(mix, bed, soil, traces, hours));
    }

    private static double median(List<Double> values) {
        double[] sorted = values.stream().mapToDouble(v -> v).sorted().toArray();
        return sorted[sorted.length / 2];
    }

    /** A summer pattern: showers with a chance of up to 60 % in six hours, warm days. */
    private static List<Traces> weather() {
        Climate climate = new Climate(
                "even",
                250,
                Arrays.stream(Month.values())
                        .map(month -> new MonthlyClimate(month, 0.3, 8, 16, 28))
                        .toList());
        List<ForecastSeries> forecasts =
                IntStream.range(0, POINTS).mapToObj(PhysicsBench::forecast).toList();
        TraceSettings settings = new TraceSettings(TRACES, 1, span(0, HOURS));
        return TraceMaker.make(forecasts, settings, climate).stream()
                .map(PointTraces::traces)
                .toList();
    }

    private static ForecastSeries forecast(int point) {
        return new ForecastSeries(
                new ForecastSeries.Stamp("invented", START, START),
                new GeoPoint(42 + point % 4 * 0.1, -85 + point / 4 * 0.1),
                air(),
                new ForecastSeries.RainOutlook(
                        IntStream.range(0, HOURS / 6)
                                .mapToObj(i -> new RainAmount(span(6 * i, 6 * i + 6), i % 7 * 0.6))
                                .toList(),
                        IntStream.range(0, HOURS / 6)
                                .mapToObj(i -> new RainChance(span(6 * i, 6 * i + 6), i % 7 * 0.1))
                                .toList()),
                List.of());
    }

    private static Window span(int from, int to) {
        return new Window(START.plus(Duration.ofHours(from)), START.plus(Duration.ofHours(to)));
    }

    private static HourlyAir air() {
        double[] temp = IntStream.range(0, HOURS)
                .mapToDouble(h -> 22 + 6 * Math.sin(Math.PI * (h - 3) / 12))
                .toArray();
        return new HourlyAir(START, temp, all(14), all(3), all(0.3));
    }

    private static double[] all(double value) {
        double[] hours = new double[HOURS];
        Arrays.fill(hours, value);
        return hours;
    }
}
