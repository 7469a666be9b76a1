package rainward.daemon.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import rainward.daemon.demo.Demo;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.PlanningDesk;
import rainward.daemon.settings.Settings;

/** One whole round on the demo's records, part by part. */
@Command(
        name = "cycle",
        description = {
            "Plan the demo's 36 fields anew as after a new forecast: read the records, draw the",
            "weather, reckon soil and stands, find an order, look for storm windows, score",
            "readiness, keep the order. Milliseconds of the wall, medians of --runs after two",
            "rounds that only warm the program up; the first round of all is told apart.",
            "Measured in a process with the heap and the collector of the packaged service."
        })
final class BenchCycle extends MeasuredApart {

    /** An hour after the first brief of the demo's story, whose order is out. */
    private static final Instant SIX = Instant.parse("2026-07-13T10:00:00Z");

    private static final int WARM_UP = 2;

    @Option(names = "--runs", paramLabel = "N", description = "How often; else 7.")
    int runs = 7;

    /**
     * The figures, as JSON shows them.
     *
     * @param cycleMs whole rounds by number of fields, median
     * @param firstMs the first round of a process
     * @param parts of the median round, in order
     */
    record Answer(Map<String, Double> cycleMs, double firstMs, List<Part> parts) {}

    /**
     * One part.
     *
     * @param ms median
     * @param sharePct of the sum of all parts
     */
    record Part(String name, double ms, double sharePct) {}

    @Override
    List<String> words() {
        return List.of("bench", "cycle", "--runs", counted("--runs", runs));
    }

    @Override
    String measured() throws IOException {
        Path folder = Files.createTempDirectory("rainward-bench");
        try {
            HomeFolder home = new HomeFolder(folder);
            PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
            Demo.run(new Demo.Show(home, true, nowhere, false, false));
            Settings settings = Office.settings(home.settings(), Map.of()).settings();
            try (Office office = Office.open(home, settings, InstantSource.fixed(SIX))) {
                return told(
                        rounds(office),
                        office.store().read(books -> books.cases()).size());
            }
        } finally {
            Folders.delete(folder);
        }
    }

    private List<Map<String, Double>> rounds(Office office) {
        PlanningDesk desk = new PlanningDesk(office);
        List<Map<String, Double>> rounds = new ArrayList<>();
        for (int round = 0; round < WARM_UP + runs; round++) {
            rounds.add(desk.timed(System::nanoTime));
        }
        return rounds;
    }

    private String told(List<Map<String, Double>> rounds, int fields) {
        List<Map<String, Double>> counted = rounds.subList(WARM_UP, rounds.size());
        double all = rounds.get(0).keySet().stream()
                .mapToDouble(part -> median(counted, part))
                .sum();
        List<Part> parts = rounds.get(0).keySet().stream()
                .map(part ->
                        new Part(part, median(counted, part), 100 * median(counted, part) / all))
                .toList();
        double whole = median(counted.stream().map(BenchCycle::sum).toList());
        Answer answer = new Answer(Map.of("f" + fields, whole), sum(rounds.get(0)), parts);
        return json ? Sheets.json(answer) : text(answer, whole);
    }

    private static double sum(Map<String, Double> round) {
        return round.values().stream().mapToDouble(ms -> ms).sum();
    }

    private static double median(List<Map<String, Double>> rounds, String part) {
        return median(
                rounds.stream().map(round -> round.getOrDefault(part, 0.0)).toList());
    }

    private static double median(List<Double> values) {
        List<Double> sorted = values.stream().sorted().toList();
        return sorted.get(sorted.size() / 2);
    }

    private static String text(Answer answer, double wholeMs) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("part", "ms", "share"));
        answer.parts()
                .forEach(part -> rows.add(List.of(
                        part.name(),
                        String.format(Locale.US, "%.1f", part.ms()),
                        String.format(Locale.US, "%.1f %%", part.sharePct()))));
        return Sheets.columns(rows)
                + System.lineSeparator()
                + String.format(
                        Locale.US,
                        "A round: %.0f ms (median); the first of a process: %.0f ms.",
                        wholeMs,
                        answer.firstMs());
    }
}
