package rainward.queue.problem;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.farm.StageRecord;

/**
 * What records and the last order tell of machines and people, the newest by name.
 *
 * @param <V> what is told
 */
final class LastSeen<V> {

    private final Optional<Plan> lastOrder;
    private final Instant asOf;
    private final Instant oldest;
    private final Map<String, V> newest = new HashMap<>();
    private final Map<String, Instant> since = new HashMap<>();

    /**
     * Nothing seen yet.
     *
     * @param lastOrder given out
     * @param asOf the moment of planning
     * @param atMost what was seen longer ago says nothing of now
     */
    LastSeen(Optional<Plan> lastOrder, Instant asOf, Duration atMost) {
        this.lastOrder = lastOrder;
        this.asOf = asOf;
        this.oldest = asOf.minus(atMost);
    }

    /** When a stage was worked at last; empty where it was not, or too long ago. */
    Optional<Instant> when(StageRecord record) {
        Optional<Instant> seen = record.underWay() ? Optional.of(asOf) : record.finishedAt();
        return seen.filter(at -> !at.isBefore(oldest));
    }

    /** What the last order says of a stage of a field. */
    Stream<PlanItem> told(String field, String stage) {
        return lastOrder.stream()
                .flatMap(order -> order.items().stream())
                .filter(item -> item.place().field().equals(field))
                .filter(item -> item.place().stage().equals(stage));
    }

    /** Notes what was seen of somebody, unless something newer was. */
    void note(String name, V what, Instant at) {
        if (since(name).map(at::isAfter).orElse(true)) {
            since.put(name, at);
            newest.put(name, what);
        }
    }

    Optional<Instant> since(String name) {
        return Optional.ofNullable(since.get(name));
    }

    Map<String, V> newest() {
        return Map.copyOf(newest);
    }
}
