package rainward.bench;

import java.util.List;
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
import rainward.weather.trace.PointTraces;
import rainward.weather.trace.TraceTimes;

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

    /** Length of the periods that the service forecasts rain for [h]. */
    @Param({"6", "1"})
    public int periodHours;

    private TraceTimes times = new TraceTimes(6);

    @Setup
    public void invent() {
        times = new TraceTimes(periodHours);
    }

    @Benchmark
    public List<PointTraces> make() {
        return times.make();
    }
}
