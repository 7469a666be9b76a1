package rainward.bench;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import rainward.farm.Machine.MassClass;
import rainward.farm.SoilTexture;
import rainward.soil.FieldSoil;
import rainward.soil.SoilRun;
import rainward.soil.SoilState;
import rainward.soil.SurfaceCondition;
import rainward.soil.column.SoilColumn;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;
import rainward.weather.trace.Traces;

/**
 * One field, 200 traces of 240 hours in 8 layers: 384,000 layer-steps of water and 480,000 of heat;
 * a millisecond is 2.6 ns a layer-step of water.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgs = "-Xmx512m")
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
public class SoilBench {

    private static final Instant START = Instant.parse("2026-07-14T12:00:00Z");
    private static final int HOURS = 240;
    private static final int TRACES = 200;

    private SoilColumn column;
    private SoilState now;
    private Traces traces;

    /** Showers in one hour of twenty on each trace. */
    @Setup
    public void invent() {
        column = new SoilColumn(
                new FieldSoil(new SoilTexture(0.4, 0.2, 2.5), 0.03, SurfaceCondition.TILLED));
        now = column.unknown(START, 22);
        SplittableRandom sky = new SplittableRandom(1);
        double[][] rain = new double[HOURS][TRACES];
        double[][] peak = new double[HOURS][TRACES];
        double[] temp = new double[HOURS];
        double[] sun = new double[HOURS];
        double[] reference = new double[HOURS];
        for (int h = 0; h < HOURS; h++) {
            double light = Math.max(0, Math.sin(Math.PI * (h % 24 - 5) / 15.0));
            temp[h] = 22 + 6 * Math.sin(2 * Math.PI * (h % 24 - 9) / 24.0);
            sun[h] = 2.5 * light;
            reference[h] = 0.5 * light;
            for (int i = 0; i < TRACES; i++) {
                rain[h][i] = sky.nextInt(20) > 0 ? 0 : sky.nextDouble(15);
                peak[h][i] = 1.7 * rain[h][i];
            }
        }
        traces = new Traces(
                new HourlyAir(START, temp, filled(14), filled(2), filled(0.4)),
                new EvaporationDemand(sun, reference),
                rain,
                peak);
    }

    private static double[] filled(double value) {
        double[] all = new double[HOURS];
        Arrays.fill(all, value);
        return all;
    }

    /** Water, heat and what is kept of them at one depth. */
    @Benchmark
    public List<SoilRun> oneDepth() {
        return column.run(now, traces, List.of(1.3), MassClass.LIGHT);
    }

    /** The same water balance read at three depths. */
    @Benchmark
    public List<SoilRun> threeDepths() {
        return column.run(now, traces, List.of(1.3, 2.5, 4.0), MassClass.LIGHT);
    }
}
