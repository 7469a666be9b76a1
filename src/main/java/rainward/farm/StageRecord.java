package rainward.farm;

import java.time.Instant;
import java.util.Optional;

/**
 * A stage of a field that was started or done.
 *
 * @param stage its name in the recipe
 * @param startedAt when work began, if anybody said so
 * @param finishedAt when it ended; empty while under way
 * @param machine which machine did it, if known
 */
public record StageRecord(
        String stage,
        Optional<Instant> startedAt,
        Optional<Instant> finishedAt,
        Optional<String> machine) {

    public StageRecord {
        Require.named("stage", stage);
        if (startedAt.isPresent() && finishedAt.isPresent()) {
            Require.that(
                    !finishedAt.get().isBefore(startedAt.get()),
                    stage + ": finished before it was started");
        }
    }

    public boolean underWay() {
        return startedAt.isPresent() && finishedAt.isEmpty();
    }

    public boolean done() {
        return finishedAt.isPresent();
    }
}
