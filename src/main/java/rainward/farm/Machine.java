package rainward.farm;

import java.time.Duration;
import java.util.Optional;
import java.util.Set;

/**
 * A tractor or truck with its implement.
 *
 * @param name what the crew calls it
 * @param operations what it can do; not empty
 * @param work width, speed and efficiency in the field
 * @param travel how it gets from field to field
 * @param refill when it has to be filled again, if ever
 * @param massClass how hard it presses on wet ground
 * @param mixChange to empty, clean and set a seeder again, with a catch test, for another mix
 */
public record Machine(
        String name,
        Set<Operation> operations,
        WorkPace work,
        Travel travel,
        Optional<Refill> refill,
        MassClass massClass,
        Duration mixChange) {

    /** Where nothing is said; common practice, no source. */
    public static final Duration USUAL_MIX_CHANGE = Duration.ofMinutes(40);

    public Machine {
        Require.named("machine name", name);
        operations = Set.copyOf(operations);
        Require.that(!operations.isEmpty(), name + ": can do nothing");
        Require.that(!mixChange.isNegative(), name + ": change of mix takes less than no time");
    }

    /** The same by another name. */
    public Machine named(String other) {
        return new Machine(other, operations, work, travel, refill, massClass, mixChange);
    }

    /** The same with another start and way of moving. */
    public Machine travelling(Travel other) {
        return new Machine(name, operations, work, other, refill, massClass, mixChange);
    }

    /** How hard a machine presses on the ground. */
    public enum MassClass {
        LIGHT,
        MEDIUM,
        HEAVY
    }

    /**
     * Pace in the field.
     *
     * @param widthM working width [m]
     * @param speedKmh forward speed [km/h]
     * @param fieldEfficiency share of time that works, 0 to 1 (ASABE D497)
     * @param turnMinutes time for a turn at the headland [min]
     */
    public record WorkPace(
            double widthM, double speedKmh, double fieldEfficiency, double turnMinutes) {

        public WorkPace {
            Require.inRange("widthM", widthM, 0.3, 60);
            Require.inRange("speedKmh", speedKmh, 0.5, 60);
            Require.inRange("fieldEfficiency", fieldEfficiency, 0.05, 1);
            Require.inRange("turnMinutes", turnMinutes, 0, 10);
        }

        /** Effective field capacity, width x speed x efficiency / 10 (ASABE EP496) [ha/h]. */
        public double workRateHaPerH() {
            return widthM * speedKmh * fieldEfficiency / 10;
        }
    }

    /**
     * Moving between fields.
     *
     * @param speedKmh on the road [km/h]
     * @param hitch to fold, hitch and unhitch at each move between properties
     * @param start where it stands at the start
     */
    public record Travel(double speedKmh, Duration hitch, GeoPoint start) {

        public Travel {
            Require.inRange("speedKmh", speedKmh, 2, 120);
            Require.that(!hitch.isNegative(), "hitch time is below zero");
        }
    }

    /**
     * Filling again.
     *
     * @param areaHa worked by one fill [ha]
     * @param stop how long a fill takes
     */
    public record Refill(double areaHa, Duration stop) {

        /** Where nothing is said; common practice, no source. */
        public static final Duration USUAL_STOP = Duration.ofMinutes(20);

        public Refill {
            Require.positive("refill areaHa", areaHa);
            Require.that(!stop.isNegative(), "refill stop is below zero");
        }
    }
}
