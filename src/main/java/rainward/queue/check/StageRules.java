package rainward.queue.check;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.farm.Machine;
import rainward.farm.Stage;
import rainward.farm.StageRecord;
import rainward.queue.pace.WorkTime;
import rainward.queue.problem.Filling;
import rainward.queue.problem.Job;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;

/** Every open stage is done once, in order, with its waits, for as long as it takes. */
final class StageRules {

    private static final Duration ONE_GO = Duration.ofHours(4);
    private static final Duration GREATEST_PAUSE = Duration.ofHours(16);
    private static final double SHARE_TOLERANCE = 1e-6;

    private final PlanProblem problem;
    private final NamedJobs jobs;

    StageRules(PlanProblem problem) {
        this.problem = problem;
        jobs = new NamedJobs(problem.jobs());
    }

    /** Work on one stage: all its items, in order of time. */
    private record Done(Stage stage, List<PlanItem> parts) {

        Instant start() {
            return parts.get(0).work().from();
        }

        Instant finish() {
            return parts.get(parts.size() - 1).work().to();
        }
    }

    List<String> faults(String field, List<PlanItem> items) {
        Job job = jobs.of(field);
        List<String> faults = new ArrayList<>();
        Map<String, Done> done = new LinkedHashMap<>();
        for (PlanItem item : items) {
            Stage stage = stage(job, item.place().stage());
            done.computeIfAbsent(stage.name(), n -> new Done(stage, new ArrayList<>()))
                    .parts()
                    .add(item);
        }
        done.values().forEach(d -> faults.addAll(length(job, d)));
        faults.addAll(order(job, done));
        job.field()
                .status()
                .heldUntil()
                .filter(until ->
                        !going(job, items.get(0)) && items.get(0).work().from().isBefore(until))
                .ifPresent(until -> faults.add(field + " is held until " + until));
        return faults;
    }

    private static Stage stage(Job job, String name) {
        return job.recipe().stages().stream()
                .filter(s -> s.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static boolean going(Job job, PlanItem item) {
        return job.field().status().underWay(item.place().stage()).isPresent();
    }

    private List<String> length(Job job, Done done) {
        List<String> faults = new ArrayList<>();
        String who = job.name() + " " + done.stage().name();
        PlanItem first = done.parts().get(0);
        Duration worked = Duration.ZERO;
        double share = 0;
        for (int i = 0; i < done.parts().size(); i++) {
            PlanItem part = done.parts().get(i);
            worked = worked.plus(part.work().length());
            share += part.shareFraction();
            if (!part.hands().equals(first.hands())) {
                faults.add(who + " changes hands");
            }
            if (i > 0 && tooLongAPause(done.parts().get(i - 1), part)) {
                faults.add(who + " rests for too long before " + part.work());
            }
        }
        Duration needed = Duration.ofMinutes(WorkTime.minutes(
                machine(first), job.field().field().areaHa(), filling(job, first)));
        if (going(job, first)) {
            if (worked.compareTo(needed) > 0) {
                faults.add(who + " takes longer than from its start");
            }
        } else if (!worked.equals(needed) || Math.abs(share - 1) > SHARE_TOLERANCE) {
            faults.add(who + " is worked for " + worked + ", needs " + needed);
        }
        if (done.parts().size() > 1 && needed.compareTo(ONE_GO) <= 0) {
            faults.add(who + " is left half done");
        }
        return faults;
    }

    private static boolean tooLongAPause(PlanItem before, PlanItem after) {
        Duration pause = Duration.between(before.work().to(), after.work().from());
        return pause.compareTo(GREATEST_PAUSE) > 0;
    }

    private static Optional<Filling> filling(Job job, PlanItem item) {
        Map<String, Filling> machines =
                job.fillings().known().getOrDefault(item.place().operation(), Map.of());
        return Optional.ofNullable(machines.get(item.hands().machine()));
    }

    private Machine machine(PlanItem item) {
        return problem.crew().machines().stream()
                .filter(m -> m.name().equals(item.hands().machine()))
                .findFirst()
                .orElseThrow();
    }

    private List<String> order(Job job, Map<String, Done> done) {
        List<String> faults = new ArrayList<>();
        Optional<Instant> before = Optional.empty();
        boolean begun = false;
        boolean goingOnly =
                done.values().stream().allMatch(d -> going(job, d.parts().get(0)));
        for (Stage stage : job.recipe().stages()) {
            Optional<Done> here = Optional.ofNullable(done.get(stage.name()));
            Optional<Instant> recorded =
                    job.field().status().of(stage.name()).flatMap(StageRecord::finishedAt);
            if (here.isPresent()) {
                before.ifPresent(
                        b -> faults.addAll(waits(job, stage, b, here.get().start())));
                begun = true;
                before = Optional.of(here.get().finish());
            } else if (!begun && recorded.isPresent()) {
                before = recorded;
            } else if (begun && !goingOnly && keeps(job, stage, done)) {
                faults.addAll(stale(job, stage, before));
                break;
            } else if (!goingOnly && !spared(job, stage, before)) {
                faults.add(job.name() + " lacks its stage " + stage.name());
            }
        }
        return faults;
    }

    /** Seed may be kept for later days, and then only what comes before it is done. */
    private static boolean keeps(Job job, Stage stage, Map<String, Done> done) {
        List<Stage> stages = job.recipe().stages();
        boolean none = stages.subList(stages.indexOf(stage), stages.size()).stream()
                .noneMatch(s -> done.containsKey(s.name()));
        return job.kept().readyWorth() > 0 && stage.equals(job.recipe().seeding()) && none;
    }

    private List<String> stale(Job job, Stage seeding, Optional<Instant> before) {
        Optional<Instant> latest =
                before.flatMap(b -> seeding.greatestWait().map(most -> b.plus(most)));
        return latest.filter(l -> l.isBefore(problem.horizon().to())).isPresent()
                ? List.of(job.name() + " is made ready so soon that it is stale before its seed")
                : List.of();
    }

    private boolean spared(Job job, Stage stage, Optional<Instant> before) {
        return stage.limits().rainDoesIt()
                && before.isPresent()
                && job.firmedByRain().get((int)
                        Duration.between(problem.horizon().from(), before.get()).toHours());
    }

    private List<String> waits(Job job, Stage stage, Instant before, Instant start) {
        Duration waited = Duration.between(before, start);
        if (going(job, stage)) {
            return List.of();
        }
        if (waited.compareTo(stage.leastWait()) < 0) {
            return List.of(job.name() + " " + stage.name() + " starts too soon: " + waited);
        }
        if (stage.greatestWait().filter(most -> waited.compareTo(most) > 0).isPresent()) {
            return List.of(job.name() + " " + stage.name() + " starts too late: " + waited);
        }
        return List.of();
    }

    private static boolean going(Job job, Stage stage) {
        return job.field().status().underWay(stage.name()).isPresent();
    }
}
