package rainward.farm;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Weather and soil that stop a stage.
 *
 * @param workableSoil true where the top of the soil must be fit to till or sow
 * @param greatestWindMps above this wind the stage stops; for spraying and spreading the label or
 *     the user's own rule [m/s]
 * @param leastWindMps below this wind it stops too: still air carries spray far [m/s]
 * @param dryAfter hours without rain after it, from the label
 * @param method how seed is put down, for a seeding stage
 * @param rainDoesIt true where a fair rain does the work of this stage (firming by rain)
 */
public record StageLimits(
        boolean workableSoil,
        OptionalDouble greatestWindMps,
        OptionalDouble leastWindMps,
        Duration dryAfter,
        Optional<SeedingMethod> method,
        boolean rainDoesIt) {

    /** Nothing but soil that carries the work. */
    public static final StageLimits SOIL_ONLY = new StageLimits(
            true,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Duration.ZERO,
            Optional.empty(),
            false);

    /** Seeding by a method on workable soil. */
    public static StageLimits seedingBy(SeedingMethod method) {
        return new StageLimits(
                true,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Duration.ZERO,
                Optional.of(method),
                false);
    }
}
