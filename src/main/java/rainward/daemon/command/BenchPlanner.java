package rainward.daemon.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Spelled;
import rainward.queue.sample.GeneratedDays;
import rainward.queue.sample.PlannerBench;
import rainward.queue.search.Effort;

/** The planner on invented days. */
@Command(
        name = "planner",
        description = {
            "Plan 30 invented days of 36 fields, and compare with longer searches and bounds.",
            "",
            "Best and bound come from a file in the program, which says how they were found;",
            "no plan can exceed the bound. Milliseconds are those of one processor core at work,",
            "after a search that only warms the program up. It takes half a minute; --large takes",
            "one more, and --find a quarter of a minute a day beside the search."
        })
final class BenchPlanner implements Callable<Integer> {

    /** Lines of {@code day,kind,best,seed,tries,bound}; those that begin with # are remarks. */
    static final String KNOWN = "/bench/planner-days.csv";

    @Option(names = "--ms", paramLabel = "MS", description = "Time for each day; else 1000.")
    long ms = 1000;

    @Option(
            names = "--large",
            description = "Add 200 fields with one crew and 1,000 with 25, ten seconds each.")
    boolean large;

    @Option(
            names = "--find",
            paramLabel = "TRIES",
            description = "Search each day with so many tries, bound it anew and print both.")
    long findTries;

    @Option(names = "--seed", paramLabel = "N", description = "Of the search with --find; else 7.")
    long seed = 7;

    @Option(names = "--json", description = "Print JSON.")
    boolean json;

    @Spec
    CommandSpec spec = CommandSpec.create();

    /** The figures, as JSON shows them: one entry a size, medians over its days. */
    record Answer(List<PlannerBench.Line> planner) {}

    @Override
    public Integer call() throws IOException {
        if (ms < 1 || findTries < 0) {
            throw Refusal.badInput("--ms and --find must be 1 or more.");
        }
        PrintWriter out = spec.commandLine().getOut();
        if (findTries > 0) {
            find(out);
            return 0;
        }
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        PlannerBench bench = new PlannerBench(threads::getCurrentThreadCpuTime);
        bench.warmUp();
        List<PlannerBench.Known> known = known();
        List<PlannerBench.DayLine> days = new ArrayList<>();
        for (int day = 0; day < known.size(); day++) {
            days.add(bench.day(day, ms, known.get(day)));
        }
        List<PlannerBench.Line> lines = new ArrayList<>(List.of(PlannerBench.medians(days)));
        if (large) {
            lines.add(bench.large(200, 1, 10_000));
            lines.add(bench.large(1_000, 25, 10_000));
        }
        out.println(json ? Sheets.json(new Answer(lines)) : text(days, lines));
        return 0;
    }

    private void find(PrintWriter out) {
        for (int day = 0; day < GeneratedDays.BENCH_DAYS; day++) {
            PlannerBench.Known found = PlannerBench.known(day, Effort.tries(seed, findTries));
            GeneratedDays.Kind[] kinds = GeneratedDays.Kind.values();
            out.printf(
                    Locale.ROOT,
                    "%d,%s,%.4f,%d,%d,%.4f%n",
                    day,
                    kinds[day % kinds.length].name().toLowerCase(Locale.ROOT),
                    found.best(),
                    seed,
                    findTries,
                    found.bound());
            out.flush();
        }
    }

    /** Reads what longer searches have found, in order of days. */
    static List<PlannerBench.Known> known() throws IOException {
        try (InputStream file = Objects.requireNonNull(
                        BenchPlanner.class.getResourceAsStream(KNOWN), KNOWN);
                BufferedReader lines =
                        new BufferedReader(new InputStreamReader(file, StandardCharsets.UTF_8))) {
            return lines.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("day"))
                    .map(line -> line.split(","))
                    .map(cells -> new PlannerBench.Known(
                            Double.parseDouble(cells[2]), Double.parseDouble(cells[5])))
                    .toList();
        }
    }

    private static String text(List<PlannerBench.DayLine> days, List<PlannerBench.Line> lines) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("day", "kind", "ha", "best", "below best", "bound", "below bound"));
        days.forEach(day ->
                rows.add(row(String.valueOf(day.day()), Spelled.spaced(day.kind()), day.line())));
        lines.forEach(
                line -> rows.add(row(line.fields() + " fields", line.ms() + " ms, median", line)));
        return Sheets.columns(rows);
    }

    private static List<String> row(String day, String kind, PlannerBench.Line line) {
        return List.of(
                day,
                kind,
                number("%.2f", line.value()),
                number("%.2f", line.best()),
                number("%.1f %%", line.ofBestPct()),
                number("%.2f", line.bound()),
                number("%.1f %%", line.gapPct()));
    }

    private static String number(String form, double value) {
        return String.format(Locale.ROOT, form, value);
    }
}
