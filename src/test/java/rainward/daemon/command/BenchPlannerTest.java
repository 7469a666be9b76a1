package rainward.daemon.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import rainward.queue.sample.GeneratedDays;
import rainward.queue.sample.PlannerBench;
import rainward.queue.search.Effort;

class BenchPlannerTest {

    @Test
    void everyDayHasABestValueBelowItsBound() throws IOException {
        List<PlannerBench.Known> known = BenchPlanner.known();
        assertThat(known).hasSize(GeneratedDays.BENCH_DAYS).allMatch(k -> k.best() < k.bound());
    }

    /** The file was not made for other days than these. */
    @Test
    void aDayReckonedAnewAgreesWithTheFile() throws IOException {
        PlannerBench.Known known = BenchPlanner.known().get(7);
        PlannerBench.Known now = PlannerBench.known(7, Effort.tries(1, 3_000));
        assertThat(now.best()).isBetween(0.8 * known.best(), known.bound());
        assertThat(now.bound()).isBetween(known.best(), 1.02 * known.bound());
    }

    @Test
    void theBenchPrintsEachDayAndTheirMedian() {
        StringWriter text = new StringWriter();
        CommandLine line = new CommandLine(new BenchPlanner()).setOut(new PrintWriter(text));
        assertThat(line.execute("--ms", "1")).isZero();
        assertThat(text.toString().lines()).hasSize(1 + GeneratedDays.BENCH_DAYS + 1);
        assertThat(text.toString()).contains("one storm").contains("36 fields");
    }
}
