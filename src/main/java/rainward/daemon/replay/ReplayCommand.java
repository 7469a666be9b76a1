package rainward.daemon.replay;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
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
import rainward.daemon.command.Sheets;
import rainward.daemon.demo.DemoScene;
import rainward.daemon.office.Refusal;
import rainward.intake.BadTableException;
import rainward.intake.StationFolder;
import rainward.replay.Gains;
import rainward.replay.Replay;
import rainward.replay.crew.CrewSeason;
import rainward.replay.crew.Policy;
import rainward.replay.crew.Scene;
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
            description = {
                "Daily station files (*.csv, one a station, of one year or many) in the form of",
                "the US Climate Reference Network, of GHCN-Daily, or of our own: day, latitude,",
                "longitude, rain_mm, low_c, high_c (or rain_in, low_f, high_f)."
            })
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

    @Option(
            names = "--trials",
            description = {
                "Also try each season with one thing otherwise: a planner with ten times the",
                "tries, a crew twice as large, one more tillage tractor, a start a week earlier,",
                "the farms in another order."
            })
    boolean trials;

    @Option(
            names = "--report",
            paramLabel = "DIR",
            description = "Folder for a page with pictures: index.html and PNG files.")
    @Nullable
    Path report;

    @Option(names = "--json", description = "Print JSON.")
    boolean json;

    @Spec
    CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() {
        if (seasons < 0 || traces < 10) {
            throw Refusal.badInput("--seasons must be 1 or more, --traces 10 or more.");
        }
        Scene scene = DemoScene.read(traces);
        List<StationYear> years = years(scene);
        int count = seasons == 0 ? years.size() * STARTS.size() : seasons;
        List<Replay.Asked> asked = Replay.seasons(years, STARTS, count);
        List<Gains.Tried> results = run(scene, asked);
        ReplayAnswer answer = ReplayAnswer.of(results, data == null);
        if (report != null) {
            new ReplayReport(answer, results, asked).write(report);
        }
        spec.commandLine().getOut().println(json ? Sheets.json(answer) : ReplayText.of(answer));
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
            return whole(new StationFolder(data).years());
        } catch (BadTableException e) {
            throw Refusal.badInput(String.valueOf(e.getMessage()));
        }
    }

    /** Years in which every start can be run; what is left out is told. */
    private List<StationYear> whole(List<StationYear> years) {
        List<StationYear> whole = years.stream()
                .filter(year -> STARTS.stream()
                        .flatMap(start -> Replay.Asked.of(year, start, 0).lacks().stream())
                        .peek(lack -> spec.commandLine().getErr().println("left out: " + lack))
                        .findFirst()
                        .isEmpty())
                .toList();
        if (whole.isEmpty()) {
            throw Refusal.badInput(
                    data + " holds no year that is whole from the end of April to late October.");
        }
        return whole;
    }

    private List<Policy> policies() {
        return Arrays.stream(Policy.values())
                .filter(policy -> only.isEmpty()
                        || only.contains(policy)
                        || policy == Policy.AS_LISTED
                        || policy == Policy.TOLD_THE_FUTURE)
                .toList();
    }

    private List<Gains.Tried> run(Scene scene, List<Replay.Asked> asked) {
        Replay replay = new Replay(scene, policies(), CrewSeason.TRIES);
        Progress progress = new Progress(spec.commandLine().getErr(), asked.size());
        if (keep == null) {
            return asked.parallelStream()
                    .map(season -> progress.told(run(replay, season)))
                    .toList();
        }
        SeasonShelf shelf = new SeasonShelf(keep);
        Map<String, Gains.Tried> known = shelf.known();
        List<Replay.Asked> left = asked.stream()
                .filter(season -> Optional.ofNullable(known.get(season.key()))
                        .filter(this::isWhole)
                        .isEmpty())
                .toList();
        progress.known(asked.size() - left.size());
        left.parallelStream().forEach(season -> shelf.keep(progress.told(run(replay, season))));
        Map<String, Gains.Tried> all = shelf.known();
        return asked.stream()
                .flatMap(s -> Optional.ofNullable(all.get(s.key())).stream())
                .toList();
    }

    private boolean isWhole(Gains.Tried kept) {
        return policies().stream().allMatch(p -> kept.asItIs().by(p).isPresent())
                && (!trials || !kept.trials().isEmpty());
    }

    private Gains.Tried run(Replay replay, Replay.Asked season) {
        return new Gains.Tried(replay.run(season), trials ? replay.trials(season) : List.of());
    }

    /** Says each season that is done, and how many there are. */
    private static final class Progress {
        private final PrintWriter err;
        private final int of;
        private final AtomicInteger done = new AtomicInteger();

        Progress(PrintWriter err, int of) {
            this.err = err;
            this.of = of;
        }

        void known(int seasons) {
            done.set(seasons);
        }

        Gains.Tried told(Gains.Tried season) {
            err.println("season " + done.incrementAndGet() + " of " + of + ": "
                    + season.asItIs().station() + " from " + season.asItIs().start());
            err.flush();
            return season;
        }
    }
}
