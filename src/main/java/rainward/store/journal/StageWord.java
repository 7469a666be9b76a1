package rainward.store.journal;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import rainward.farm.DayClock;

/**
 * What a person says about a stage of a field.
 *
 * @param field its name
 * @param stage its name in the recipe
 * @param said when and by whom
 * @param means with what
 */
public record StageWord(String field, String stage, Said said, Means means) {

    /**
     * When and by whom.
     *
     * @param at when it happened
     * @param now when it is said
     * @param by who says so
     * @param clock days and times as they say them
     */
    public record Said(Instant at, Instant now, String by, DayClock clock) {}

    /**
     * With what.
     *
     * @param machine which did it, if known
     * @param mix what went into the ground, if it is not the mix wanted there
     * @param passingOver earlier stages that are left out on purpose, by name
     */
    public record Means(Optional<String> machine, Optional<String> mix, Set<String> passingOver) {

        /** Nothing said. */
        public static final Means UNSAID = new Means(Optional.empty(), Optional.empty(), Set.of());

        public Means {
            passingOver = Set.copyOf(passingOver);
        }
    }
}
