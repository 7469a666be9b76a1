package rainward.cycle.ground;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListMap;
import rainward.farm.Field;
import rainward.soil.SoilState;

/**
 * Soil states of one season's past, so that a day that was reckoned once is not reckoned again. It
 * holds for one course of the weather at each property; whoever holds it drops it with the season.
 */
public final class GroundMemory {

    /** Between two states that are kept. */
    private static final Duration GRAIN = Duration.ofHours(24);

    private final boolean keeps;
    private final Map<Key, NavigableMap<Instant, SoilState>> known = new ConcurrentHashMap<>();

    private GroundMemory(boolean keeps) {
        this.keeps = keeps;
    }

    /** Remembers nothing. */
    public static GroundMemory none() {
        return new GroundMemory(false);
    }

    /** A memory of its own. */
    public static GroundMemory ofSeason() {
        return new GroundMemory(true);
    }

    /**
     * Ground that is alike.
     *
     * @param property whose weather it has
     * @param ground of the field
     * @param events that it has seen
     */
    record Key(String property, Field.Ground ground, List<GroundEvent> events) {

        Key {
            events = List.copyOf(events);
        }
    }

    /** The last state known at or before an instant. */
    Optional<SoilState> before(Key key, Instant at) {
        return Optional.ofNullable(known.get(key))
                .flatMap(states -> Optional.ofNullable(states.floorEntry(at)))
                .map(Map.Entry::getValue);
    }

    /** How far to go in one step on the way from one instant to another. */
    Instant step(Instant from, Instant to) {
        Instant next = from.plus(GRAIN);
        return keeps && next.isBefore(to) ? next : to;
    }

    void keep(Key key, SoilState state) {
        if (keeps) {
            known.computeIfAbsent(key, k -> new ConcurrentSkipListMap<>()).put(state.at(), state);
        }
    }
}
