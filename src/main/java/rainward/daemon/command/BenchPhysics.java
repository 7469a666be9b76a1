package rainward.daemon.command;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import rainward.cycle.PhysicsBench;
import rainward.farm.Mix;
import rainward.intake.SharedTables;
import rainward.intake.TableFolder;

/** Soil and stand on invented fields. */
@Command(
        name = "physics",
        description = {
            "Reckon soil and stand of invented fields: 200 traces of 240 hours in 8 layers, every",
            "seeding hour of a week, the mixes that come with the program in turn.",
            "",
            "Milliseconds are those of one processor core at work, so that other programs on the",
            "machine change them little. 10,000 fields take about a minute. Measured in a process",
            "with the heap and the collector of the packaged service."
        })
public final class BenchPhysics extends MeasuredApart {

    private static final List<Integer> COUNTS = List.of(36, 1_000, 10_000);

    @Option(
            names = "--most",
            paramLabel = "N",
            description = "Fields of the longest row; else 10000.")
    int most = 10_000;

    @Override
    List<String> words() {
        return List.of("bench", "physics", "--most", counted("--most", most));
    }

    @Override
    String measured() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        PhysicsBench.Figures figures =
                new PhysicsBench(threads::getCurrentThreadCpuTime, mixes()).run(counts());
        return json ? Sheets.json(figures) : text(figures);
    }

    private List<Integer> counts() {
        List<Integer> counts =
                new ArrayList<>(COUNTS.stream().filter(count -> count < most).toList());
        counts.add(most);
        return counts;
    }

    private static List<Mix> mixes() {
        SharedTables tables = new SharedTables(TableFolder.onClassPath());
        return List.copyOf(tables.mixes("southern michigan").values());
    }

    private static String text(PhysicsBench.Figures figures) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("fields", "ms a field"));
        figures.byFields()
                .forEach(row -> rows.add(List.of(
                        String.valueOf(row.fields()),
                        String.format(Locale.US, "%.2f", row.msPerField()))));
        return Sheets.columns(rows)
                + System.lineSeparator()
                + String.format(
                        Locale.US,
                        "Soil and stand of a field: %.2f ms (median); traces of a property: %.2f"
                                + " ms.",
                        figures.physicsMsPerField(),
                        figures.tracesMs());
    }
}
