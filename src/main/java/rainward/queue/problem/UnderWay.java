package rainward.queue.problem;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import rainward.farm.Machine;
import rainward.farm.Stage;
import rainward.farm.StageRecord;

/** Work that goes on at the moment of planning. */
public final class UnderWay {

    /** What is under way for longer than its time takes at least that much more; our choice. */
    private static final int LEAST_LEFT_MINUTES = 15;

    private UnderWay() {}

    /** The machine that works on a field now: the one recorded, else the one it was given to. */
    public static Optional<Machine> on(Job job, PlanProblem problem) {
        OpenStages stages = OpenStages.of(job);
        if (stages.underWay().isEmpty()) {
            return Optional.empty();
        }
        Stage stage = stages.stage(stages.goingIndex());
        Optional<String> ordered = problem.lastOrder().stream()
                .flatMap(o -> o.items().stream())
                .filter(i -> i.place().field().equals(job.name()))
                .filter(i -> i.place().stage().equals(stage.name()))
                .map(i -> i.hands().machine())
                .findFirst();
        Optional<String> name = stages.underWay().get().machine().or(() -> ordered);
        return problem.crew().machines().stream()
                .filter(m -> m.operations().contains(stage.operation()))
                .filter(m -> name.isEmpty() || m.name().equals(name.get()))
                .findFirst();
    }

    /** Minutes still to work; time since the start counts as worked. */
    public static int minutesLeft(int whole, StageRecord record, Instant asOf) {
        long worked = record.startedAt()
                .map(s -> Math.max(0, Duration.between(s, asOf).toMinutes()))
                .orElse(0L);
        return (int) Math.max(Math.min(whole, LEAST_LEFT_MINUTES), whole - worked);
    }
}
