package rainward.queue.problem;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import rainward.farm.Operation;
import rainward.farm.Require;
import rainward.farm.Window;

/**
 * One stage of one field, given to a machine and a person. A stage that is too long for a day is
 * several items, one for each stretch of work.
 *
 * @param rank place of the field in the order, from 1; all stages of a field share it
 * @param place field and stage
 * @param hands machine and person
 * @param work from start to finish of the work, travel not counted in
 * @param drivingHours of the machine to get there [h]
 * @param sowing what is sown and what is hoped for; on the seeding stage only
 * @param shareFraction share of the field that is worked in this item; 1 where it is done in one go
 */
public record PlanItem(
        int rank,
        Place place,
        Hands hands,
        Window work,
        double drivingHours,
        Optional<Sowing> sowing,
        double shareFraction) {

    public PlanItem {
        Require.inRange("shareFraction", shareFraction, 0, 1);
    }

    /** A stage that is done in one go. */
    public PlanItem(
            int rank,
            Place place,
            Hands hands,
            Window work,
            double drivingHours,
            Optional<Sowing> sowing) {
        this(rank, place, hands, work, drivingHours, sowing, 1);
    }

    /** Time on the road before the work, in full seconds. */
    public Duration driving() {
        return Duration.ofSeconds(Math.round(drivingHours * 3600));
    }

    /** Before the work, to set the seeder for another mix. */
    public Duration setting() {
        return sowing.map(Sowing::setting).orElse(Duration.ZERO);
    }

    /** When its machine has to leave for it, or to be set for it. */
    public Instant setsOut() {
        return work.from().minus(driving()).minus(setting());
    }

    /** Which stage of which field. */
    public record Place(String field, String property, String stage, Operation operation) {}

    /** Who does it, with what. */
    public record Hands(String machine, String person) {}

    /**
     * What goes in.
     *
     * @param mix its name
     * @param chance of a stand when seeded in that hour, 0 to 1
     * @param worth expected worth, 0 to 1
     * @param setting before the work, to empty the seeder of another mix, clean and set it
     */
    public record Sowing(String mix, double chance, double worth, Duration setting) {

        /** By a seeder that holds the mix. */
        public Sowing(String mix, double chance, double worth) {
            this(mix, chance, worth, Duration.ZERO);
        }

        /** Orders that were put on record before the time was reckoned do not tell it. */
        public Sowing {
            setting = Objects.requireNonNullElse(setting, Duration.ZERO);
        }
    }
}
