package rainward.farm;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Where a field stands: what has been done and what the person said about it.
 *
 * @param state the season's state
 * @param stages started and done in this round of the recipe, in order of time
 * @param sownMix mix that is in the ground, once seeded
 * @param heldUntil left out of the order until then
 * @param pinnedFirst the person wants it before all others
 */
public record FieldStatus(
        FieldState state,
        List<StageRecord> stages,
        Optional<String> sownMix,
        Optional<Instant> heldUntil,
        boolean pinnedFirst) {

    /** A field that nobody has touched. */
    public static final FieldStatus UNTOUCHED = new FieldStatus(
            FieldState.PENDING, List.of(), Optional.empty(), Optional.empty(), false);

    public FieldStatus {
        stages = List.copyOf(stages);
    }

    /** True where it belongs in the queue: its seed is still to go in. */
    public boolean waiting() {
        return state == FieldState.PENDING
                || state == FieldState.IN_WORK
                || state == FieldState.FAILED;
    }

    /** Until when it is left out of the order, seen from a moment; empty where it is not. */
    public Optional<Instant> heldAt(Instant asOf) {
        return heldUntil.filter(until -> until.isAfter(asOf));
    }

    /** The record of a stage that was started and is not done; empty where it is not under way. */
    public Optional<StageRecord> underWay(String stage) {
        return of(stage).filter(StageRecord::underWay);
    }

    /** When the last stage of a seeded field was finished; empty where it is not seeded. */
    public Optional<Instant> seededAt() {
        return state == FieldState.SEEDED || state == FieldState.UP
                ? stages.stream()
                        .map(StageRecord::finishedAt)
                        .flatMap(Optional::stream)
                        .max(Comparator.naturalOrder())
                : Optional.empty();
    }

    /** The record of a stage, if it was started or done. */
    public Optional<StageRecord> of(String stage) {
        return stages.stream().filter(s -> s.stage().equals(stage)).reduce((a, b) -> b);
    }
}
