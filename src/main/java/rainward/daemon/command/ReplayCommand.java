package rainward.daemon.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rainward.daemon.demo.DemoScene;
import rainward.daemon.office.Refusal;
import rainward.daemon.office.SeasonShelf;
import rainward.intake.BadTableException;
import rainward.intake.StationFolder;
import rainward.replay.Replay;
import rainward.replay.crew.CrewSeason;
import rainward.replay.crew.Policy;
import rainward.replay.crew.Scene;
import rainward.replay.score.Comparison;
import rainward.replay.score.Losses;
import rainward.replay.score.Reliability;
import rainward.replay.score.SeasonResult;
import rainward.replay.truth.InventedStation;
import rainward.soil.verify.StationYear;

/** Runs past seasons again and shows what the order was worth. */
@Command(
        name = "replay",
        description = {
            "Run past seasons again and show what the order was worth.",
            "",
            "The demo's crew and fields are laid around each station. Its observed weather is the",
            "truth; forecasts are drawn from it with the skill of public ones. Every policy has the",
            "same weather, forecasts, breakdowns and paces; seasons start on 6, 16 and 26 July.",
            "Without --data the weather is invented. A run that was stopped goes on where it was",
            "when it is given the same --keep folder."
        })
public final class ReplayCommand implements Callable<Integer> {

    private static final List<LocalDate> STARTS =
            List.of(LocalDate.of(2020, 7, 6), LocalDate.of(2020, 7, 16), LocalDate.of(2020, 7, 26));

    private static final int INVENTED_YEARS = 27;

    @Option(
            names = "--data",
            paramLabel = "DIR",
            description = "Daily station files in the form of the US Climate Reference Network.")
    @Nullable
    Path data;

    @Option(
            names = "--seasons",
            paramLabel = "N",
            description = "How many; else three starts at every station.")
    int seasons;

    @Option(
            names = "--keep",
            paramLabel = "DIR",
            description = "Folder in which finished seasons are kept; else none is.")
    @Nullable
    Path keep;

    @Option(
            names = "--traces",
            paramLabel = "N",
            description = "Courses of the weather in each round; else ${DEFAULT-VALUE}.",
            defaultValue = "40")
    int traces;

    @Option(
            names = "--policy",
            paramLabel = "NAME",
            description = {
                "Only this policy beside the listed order and the one told the future; may be",
                "repeated. One of ${COMPLETION-CANDIDATES}."
            })
    List<Policy> only = List.of();

    @Option(names = "--json", description = "Print JSON.")
    boolean json;

    @Spec
    CommandSpec spec = CommandSpec.create();

    /**
     * What is printed as JSON.
     *
     * @param invented true where the weather is
     * @param gapClosed share of the way to those who know the weather to come
     */
    record Answer(
            int seasons,
            boolean invented,
            List<Comparison.Line> policies,
            Comparison.GapClosed gapClosed,
            Comparison.PlainRule byPlainRule,
            List<Reliability.Step> reliability,
            List<Losses.Line> lossesToListed) {}

    @Override
    public Integer call() {
        if (seasons < 0 || traces < 10) {
            throw Refusal.badInput("--seasons must be 1 or more, --traces 10 or more.");
        }
        Scene scene = DemoScene.read(traces);
        List<StationYear> years = years(scene);
        int count = seasons == 0 ? years.size() * STARTS.size() : seasons;
        List<SeasonResult> results = run(scene, Replay.seasons(years, STARTS, count));
        Comparison comparison = Comparison.of(results);
        Answer answer = new Answer(
                comparison.seasons(),
                data == null,
                comparison.policies(),
                comparison.gapClosed(),
                comparison.byPlainRule(),
                Reliability.of(results, Policy.RAINWARD),
                Losses.of(results, Policy.RAINWARD, Policy.AS_LISTED));
        spec.commandLine().getOut().println(json ? Sheets.json(answer) : text(answer));
        return 0;
    }

    private List<StationYear> years(Scene scene) {
        if (data == null) {
            return IntStream.rangeClosed(1, INVENTED_YEARS)
                    .mapToObj(i -> InventedStation.of(
                            scene.rules().draw().climate(), scene.yard(), 2020, i))
                    .toList();
        }
        try {
            return new StationFolder(data).stations();
        } catch (BadTableException e) {
            throw Refusal.badInput(String.valueOf(e.getMessage()));
        }
    }

    private List<Policy> policies() {
        return Arrays.stream(Policy.values())
                .filter(policy -> only.isEmpty()
                        || only.contains(policy)
                        || policy == Policy.AS_LISTED
                        || policy == Policy.TOLD_THE_FUTURE)
                .toList();
    }

    private List<SeasonResult> run(Scene scene, List<Replay.Asked> asked) {
        Replay replay = new Replay(scene, policies(), CrewSeason.TRIES);
        PrintWriter err = spec.commandLine().getErr();
        if (keep == null) {
            AtomicInteger done = new AtomicInteger();
            return asked.parallelStream()
                    .map(season -> told(replay.run(season), done, asked.size(), err))
                    .toList();
        }
        SeasonShelf shelf = new SeasonShelf(keep);
        Map<String, SeasonResult> known = shelf.known();
        List<Replay.Asked> left = asked.stream()
                .filter(s -> Optional.ofNullable(known.get(s.key()))
                        .filter(k -> policies().stream().allMatch(p -> k.by(p).isPresent()))
                        .isEmpty())
                .toList();
        AtomicInteger done = new AtomicInteger(asked.size() - left.size());
        left.parallelStream().forEach(season -> {
            SeasonResult result = told(replay.run(season), done, asked.size(), err);
            shelf.keep(result);
        });
        Map<String, SeasonResult> all = shelf.known();
        return asked.stream()
                .flatMap(s -> Optional.ofNullable(all.get(s.key())).stream())
                .toList();
    }

    private static SeasonResult told(
            SeasonResult season, AtomicInteger done, int of, PrintWriter err) {
        err.println("season " + done.incrementAndGet() + " of " + of + ": " + season.station()
                + " from " + season.start());
        err.flush();
        return season;
    }

    private static String text(Answer answer) {
        List<String> lines = new ArrayList<>();
        lines.add(answer.seasons() + " seasons" + (answer.invented() ? ", weather invented" : "")
                + "; means a season. Worth is acres x priority x worth of the stand's date.");
        lines.add("");
        lines.add("Judged by the stand model:");
        lines.add(table(answer.policies()));
        lines.add(closed(answer.gapClosed()));
        lines.add("");
        lines.add("Judged by a plain rule (half an inch within two weeks, a quarter more within ten"
                + " days of it, no two-inch day):");
        lines.add(table(answer.byPlainRule().policies()));
        lines.add(closed(answer.byPlainRule().gapClosed()));
        lines.add("");
        lines.add("Chance that the order gave, and what came of it:");
        answer.reliability()
                .forEach(step -> lines.add(String.format(
                        Locale.US,
                        "  %3.0f %% told, %3.0f %% came (%d fields)",
                        100 * step.toldFraction(),
                        100 * step.cameFraction(),
                        step.fields())));
        lines.add("");
        lines.add(
                "Fields that Rainward lost and the listed order got up, and the other way round:");
        answer.lossesToListed()
                .forEach(line -> lines.add("  "
                        + line.cause()
                                .map(c -> c.name().toLowerCase(Locale.ROOT).replace('_', ' '))
                                .orElse("never seeded")
                        + ": lost " + line.lost() + ", won " + line.won()));
        return String.join(System.lineSeparator(), lines);
    }

    private static String table(List<Comparison.Line> policies) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                "policy",
                "stand ac",
                "worth",
                "95 %",
                "over listed (95 %)",
                "false starts",
                "washed",
                "idle d",
                "km",
                "changes"));
        for (Comparison.Line line : policies) {
            rows.add(List.of(
                    line.name(),
                    one(line.acresEstablished()),
                    one(line.worth()),
                    one(line.worthCi95()[0]) + " to " + one(line.worthCi95()[1]),
                    one(line.overListed().mean()) + " (" + one(line.overListed().low()) + " to "
                            + one(line.overListed().high()) + ")",
                    one(line.falseStarts()),
                    one(line.washedOut()),
                    one(line.idleDays()),
                    String.valueOf(Math.round(line.km())),
                    one(line.orderChanges())));
        }
        return Sheets.columns(rows);
    }

    private static String closed(Comparison.GapClosed gap) {
        return "Of the gap to " + gap.ceiling() + " Rainward closes " + percent(gap.vsAsListed())
                + " from the listed order and " + percent(gap.vsBestHabit()) + " from the best"
                + " habit (" + gap.bestHabit() + "); with patience "
                + percent(gap.patientVsBestHabit()) + " from there.";
    }

    private static String percent(double share) {
        return Double.isNaN(share) ? "none" : Math.round(100 * share) + " %";
    }

    private static String one(double value) {
        return String.format(Locale.US, "%.1f", value);
    }
}
