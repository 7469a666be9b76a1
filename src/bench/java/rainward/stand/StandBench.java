package rainward.stand;

import java.time.Instant;
import java.time.ZoneId;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
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
import rainward.farm.SeedingMethod;
import rainward.farm.SoilTexture;
import rainward.intake.Shipped;
import rainward.soil.SoilRun;
import rainward.stand.model.StandModel;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;
import rainward.weather.trace.Traces;

/** One field, one mix, all seeding hours of a week on 200 traces of ten days. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class StandBench {
    private static final int HOURS = 240;
    private static final int TRACES = 200;
    private static final Instant START = Instant.parse("2026-07-15T04:00:00Z");

    @Param({"turnip and rape", "three brassicas", "clover and turnip"})
    public String mix;

    private StandCase question;

    /** Showers by chance, a top that wets and dries, warm days: every branch is walked. */
    @Setup
    public void wetAndDry() {
        double[][] potential = new double[HOURS][TRACES];
        double[][] temp = new double[HOURS][TRACES];
        double[][] surface = new double[HOURS][TRACES];
        double[][] front = new double[HOURS][TRACES];
        double[][] rain = new double[HOURS][TRACES];
        double[][] peak = new double[HOURS][TRACES];
        var sky = new SplittableRandom(7);
        double[] dryHours = new double[TRACES];
        for (int t = 0; t < TRACES; t++) {
            dryHours[t] = 200;
        }
        for (int h = 0; h < HOURS; h++) {
            double day = Math.sin((h - 8) * Math.PI / 12);
            for (int t = 0; t < TRACES; t++) {
                rain[h][t] = sky.nextDouble() < 0.012 ? sky.nextDouble(25) : 0;
                peak[h][t] = rain[h][t] * 1.6;
                dryHours[t] = rain[h][t] > 4 ? 0 : dryHours[t] + 1;
                potential[h][t] = -0.03 * Math.exp(dryHours[t] / 24);
                front[h][t] = Math.max(0, dryHours[t] / 24 - 3.5);
                temp[h][t] = 25 + 6 * day;
                surface[h][t] = 27 + 14 * day + (dryHours[t] > 48 ? 16 * day : 0);
            }
        }
        double[] none = new double[HOURS];
        question = new StandCase(
                Shipped.mix(mix),
                new SeedingConditions(
                        SeedingMethod.ROLLED, new SoilTexture(0.3, 0.15, 2.5), 0.06, true, 0),
                new SoilRun(
                        START,
                        new SoilRun.SeedZone(1.0, potential, potential, temp, surface),
                        new SoilRun.SoilSurface(front, rain, new boolean[HOURS][TRACES])),
                new Traces(
                        new HourlyAir(START, none, none, none, none),
                        new EvaporationDemand(none, none),
                        rain,
                        peak),
                new SeedingHours(START, 168, ZoneId.of("America/Detroit")));
    }

    @Benchmark
    public StandOutlook outlook() {
        return StandModel.usual().outlook(question);
    }
}
