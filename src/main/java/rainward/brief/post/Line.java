package rainward.brief.post;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a letter says of one piece of work, for a program that reads it. */
public sealed interface Line {

    /** Name of the field. */
    String field();

    /** Chance of a stand when seeded as planned, 0 to 1, where seed goes in. */
    OptionalDouble chance();

    /**
     * A stage of the order.
     *
     * @param rank place of the field in the order, from 1
     * @param field its name
     * @param property it belongs to
     * @param task what is done, by whom
     * @param from start
     * @param to end
     * @param chance of a stand, on the seeding stage only
     */
    record Work(
            int rank,
            String field,
            String property,
            Task task,
            Instant from,
            Instant to,
            OptionalDouble chance)
            implements Line {}

    /** What is done, by whom, with what. */
    record Task(String stage, String machine, String person, Optional<String> mix) {}

    /**
     * A field that fits before the rain.
     *
     * @param field its name
     * @param plannedStart of seeding
     * @param lastSafeStart of seeding
     * @param chance of a stand
     */
    record Fit(String field, Instant plannedStart, Instant lastSafeStart, OptionalDouble chance)
            implements Line {}
}
