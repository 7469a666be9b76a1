package rainward.queue.model;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import rainward.farm.FieldState;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.farm.Person;
import rainward.farm.Stage;
import rainward.queue.pace.Roads;
import rainward.queue.problem.Job;
import rainward.queue.problem.OpenStages;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;
import rainward.queue.problem.Standing;
import rainward.queue.shop.OpenTime;

/** Says of a field, before any search, why it cannot be in the order at all. */
public final class Screening {

    private final PlanProblem problem;
    private final Yields yields;
    private final Function<Machine, GeoPoint> standing;
    private final int longestShift;

    private Screening(PlanProblem problem) {
        this.problem = problem;
        yields = new Yields(problem);
        standing = Standing.ofMachines(problem);
        Shifts shifts = Shifts.of(problem);
        longestShift = problem.crew().people().stream()
                .map(shifts::of)
                .mapToInt(OpenTime::longestMinutes)
                .max()
                .orElse(0);
    }

    /** Fields that can be planned, and the others with why. */
    public record Screened(List<Job> fit, List<Plan.LeftOut> unfit) {}

    public static Screened of(PlanProblem problem) {
        Screening screening = new Screening(problem);
        Set<String> names = new HashSet<>();
        List<Job> fit = new ArrayList<>();
        List<Plan.LeftOut> unfit = new ArrayList<>();
        for (Job job : problem.jobs()) {
            Optional<String> why = names.add(job.name())
                    ? screening.whyNot(job)
                    : Optional.of("is named twice; only the first is planned");
            why.ifPresentOrElse(
                    w -> unfit.add(new Plan.LeftOut(job.name(), w)), () -> fit.add(job));
        }
        return new Screened(fit, unfit);
    }

    private Optional<String> whyNot(Job job) {
        return Stream.<Function<Job, Optional<String>>>of(
                        this::state, this::seed, this::hands, this::reach, this::ground)
                .flatMap(check -> check.apply(job).stream())
                .findFirst();
    }

    private Optional<String> state(Job job) {
        FieldState state = job.field().status().state();
        if (!job.field().status().waiting()) {
            return Optional.of("is not waiting for seed: " + state.name().toLowerCase(Locale.ROOT));
        }
        if (OpenStages.of(job).nothingLeft()) {
            return Optional.of("has no stage left to do");
        }
        return job.field()
                .status()
                .heldUntil()
                .filter(until -> !until.isBefore(problem.horizon().to()))
                .map(until -> "is held until " + problem.told(until) + ", after the days planned");
    }

    private Optional<String> seed(Job job) {
        boolean seeds = toDo(job).stream().anyMatch(s -> s.operation() == Operation.SEED);
        if (seeds && job.options().isEmpty()) {
            return Optional.of("has no mix that may be sown");
        }
        double areaHa = job.field().field().areaHa();
        boolean inShed = job.options().stream()
                .map(o -> Optional.ofNullable(problem.stockHa().get(o.mix())))
                .anyMatch(ha -> ha.isEmpty() || ha.get() >= areaHa);
        return seeds && !inShed
                ? Optional.of("needs more seed than the shed holds")
                : Optional.empty();
    }

    private static List<Stage> toDo(Job job) {
        return OpenStages.of(job).toDo();
    }

    private Optional<String> hands(Job job) {
        for (Stage stage : toDo(job)) {
            List<Machine> able = able(stage);
            if (able.isEmpty()) {
                return Optional.of("no machine can " + words(stage));
            }
            if (able.stream().noneMatch(this::hasDriver)) {
                return Optional.of(
                        "nobody can run " + able.get(0).name() + ", needed to " + words(stage));
            }
        }
        return Optional.empty();
    }

    private List<Machine> able(Stage stage) {
        return problem.crew().machines().stream()
                .filter(m -> m.operations().contains(stage.operation()))
                .toList();
    }

    private boolean hasDriver(Machine machine) {
        return problem.crew().people().stream().anyMatch((Person p) -> p.canRun(machine.name()));
    }

    private static String words(Stage stage) {
        String verb = stage.operation().name().toLowerCase(Locale.ROOT);
        return verb.equals(stage.name()) ? verb : verb + " (stage " + stage.name() + ")";
    }

    private Optional<String> reach(Job job) {
        if (longestShift == 0) {
            return Optional.of("nobody works on any of the days planned");
        }
        for (Stage stage : toDo(job)) {
            int least = able(stage).stream().mapToInt(m -> trip(m, job)).min().orElse(0);
            if (least > longestShift) {
                return Optional.of("is too far: the nearest machine for "
                        + stage.name()
                        + " needs "
                        + least / 60
                        + " h to get there, longer than a shift");
            }
        }
        return Optional.empty();
    }

    private int trip(Machine machine, Job job) {
        return Roads.minutes(
                machine, standing.apply(machine), job.arrival(), problem.crew().roadFactor());
    }

    private Optional<String> ground(Job job) {
        for (Stage stage : toDo(job)) {
            BitSet closed = yields.closed(job, stage.operation());
            if (stage.operation() == Operation.SEED && yields.keeping(job).readyHa() > 0) {
                return Optional.empty();
            }
            if (closed.nextClearBit(0) >= problem.hours()) {
                BitSet stopped = job.stopped().getOrDefault(stage.operation(), new BitSet());
                boolean wet = stopped.nextClearBit(0) >= problem.hours();
                return Optional.of(
                        wet
                                ? "ground or wind stops " + stage.name() + " on all days planned"
                                : BetterLater.words(job, problem)
                                        .orElse(
                                                "no mix has a chance of a stand on the days planned"));
            }
        }
        return Optional.empty();
    }
}
