package rainward.queue.problem;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rainward.farm.Stage;
import rainward.farm.StageRecord;

/**
 * What is still to do on a field.
 *
 * @param job the field
 * @param next index of the first stage that is neither done nor under way
 * @param underWay the stage that goes on now, if one does
 */
public record OpenStages(Job job, int next, Optional<StageRecord> underWay) {

    /** Reads the records: all stages up to the last one done count as done. */
    public static OpenStages of(Job job) {
        List<Stage> stages = job.recipe().stages();
        int done = -1;
        for (int i = 0; i < stages.size(); i++) {
            if (record(job, i).filter(StageRecord::done).isPresent()) {
                done = i;
            }
        }
        int next = done + 1;
        Optional<StageRecord> going = next < stages.size()
                ? record(job, next).filter(r -> r.startedAt().isPresent())
                : Optional.empty();
        return new OpenStages(job, going.isPresent() ? next + 1 : next, going);
    }

    private static Optional<StageRecord> record(Job job, int stage) {
        return job.field().status().of(job.recipe().stages().get(stage).name());
    }

    /**
     * True where a stage that was ordered is still to do: also one that was done before, and was
     * ordered once more because what came after it would be too late.
     *
     * @param stage index
     * @param orderedAt when the order was given out
     */
    public boolean stillToDo(int stage, Instant orderedAt) {
        return stage >= next
                || (underWay.isEmpty()
                        && record(job, stage)
                                .flatMap(StageRecord::finishedAt)
                                .filter(done -> !done.isAfter(orderedAt))
                                .isPresent());
    }

    /** When the stage before {@code stage} was done, if it was. */
    public Optional<Instant> doneBefore(int stage) {
        return stage == 0
                ? Optional.empty()
                : record(job, stage - 1).flatMap(StageRecord::finishedAt);
    }

    /** Last start that the work before allows, if it limits it. */
    public Optional<Instant> latestStart(int stage) {
        return doneBefore(stage).flatMap(done -> stage(stage).greatestWait().map(done::plus));
    }

    /** True where nothing but seed is missing, and still is at a later moment. */
    public boolean readyUntil(Instant later) {
        return next < count()
                && stage(next).equals(job.recipe().seeding())
                && (underWay.isPresent()
                        || latestStart(next).filter(l -> l.isBefore(later)).isEmpty());
    }

    /** Index of the stage that is under way. */
    public int goingIndex() {
        return next - 1;
    }

    public Stage stage(int index) {
        return job.recipe().stages().get(index);
    }

    public int count() {
        return job.recipe().stages().size();
    }

    public boolean nothingLeft() {
        return next >= count() && underWay.isEmpty();
    }

    /** All stages that have to be given to somebody. */
    public List<Stage> toDo() {
        int first = underWay.isPresent() ? next - 1 : next;
        return job.recipe().stages().subList(Math.min(first, count()), count());
    }
}
