package rainward.daemon.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rainward.daemon.demo.FaultWeek;
import rainward.daemon.office.Refusal;

/** Runs the service through a week of faults. */
@Command(
        name = "week",
        description = {
            "Run the service through a week in which its weather services fail again and again.",
            "",
            "A server on this machine plays a week of recorded answers of the invented crew with",
            "faults thrown in; the clock runs ahead. The closing list says what each day's plan",
            "was made from. Nothing outside this machine is asked; it takes a minute or two.",
            "Exit code 1: a day had no plan, or a property no forecast."
        })
public final class VerifyWeek implements Callable<Integer> {

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "Same seed, same faults. Else ${DEFAULT-VALUE}.",
            defaultValue = "20260713")
    long seed;

    @Option(names = "--json", description = "Print JSON.")
    boolean json;

    @Spec
    CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() {
        FaultWeek.Report report = report();
        spec.commandLine().getOut().println(json ? Sheets.json(report) : text(report));
        return report.held() ? 0 : Refusal.BAD_WORLD;
    }

    private FaultWeek.Report report() {
        try {
            Path folder = Files.createTempDirectory("rainward-week");
            try {
                return FaultWeek.run(folder, seed);
            } finally {
                Folders.delete(folder);
            }
        } catch (IOException e) {
            throw Refusal.badWorld(
                    "The week needs room in the folder for temporary files: " + e.getMessage());
        }
    }

    private static String text(FaultWeek.Report report) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                "day",
                "forecast from",
                "age",
                "rain of the day before",
                "stages",
                "asked",
                "faults"));
        report.days().forEach(day -> rows.add(row(day)));
        String end = System.lineSeparator();
        String told = report.days().stream()
                .flatMap(day -> day.told().stream().map(words -> day.day() + "  " + words))
                .collect(Collectors.joining(end));
        return Sheets.columns(rows)
                + end
                + end
                + told
                + end
                + end
                + String.format(
                        Locale.US,
                        "%d pulls of all properties, %d questions, %d times a property without"
                                + " a forecast.",
                        report.pulls(),
                        report.requests(),
                        report.without());
    }

    private static List<String> row(FaultWeek.Day day) {
        return List.of(
                day.day().toString(),
                FaultWeek.words(day.sources()),
                String.format(Locale.US, "%.1f h", day.forecastAgeH()),
                String.join(" + ", day.observedRain()),
                String.valueOf(day.planItems()),
                counts(day.requests()),
                String.valueOf(day.faults().values().stream()
                        .mapToInt(Integer::intValue)
                        .sum()));
    }

    private static String counts(Map<String, Integer> requests) {
        return requests.entrySet().stream()
                .map(e -> e.getKey() + " " + e.getValue())
                .collect(Collectors.joining(", "));
    }
}
