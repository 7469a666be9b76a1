package rainward.brief;

import java.time.Instant;
import java.util.Optional;

/**
 * What is different from the brief before, for one field.
 *
 * @param field its name
 * @param kind what sort of change
 * @param before start of its seeding in the order before, if it was in
 * @param after start of its seeding now, if it is in
 * @param why in words; empty where there is no more to say
 */
public record Change(
        String field, Kind kind, Optional<Instant> before, Optional<Instant> after, String why) {

    /** Sorts of change, in the order they are listed. */
    public enum Kind {
        SEEDED,
        ADDED,
        EARLIER,
        LATER,
        OTHER_MIX,
        TAKEN_OUT
    }
}
