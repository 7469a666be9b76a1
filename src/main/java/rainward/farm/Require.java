package rainward.farm;

import java.util.Objects;
import java.util.function.Supplier;

/**
 * Checks that name the value, the bound and what was given: a failed one is a bug of the caller.
 */
public final class Require {

    private Require() {}

    /** Refuses NaN and anything outside the closed range. */
    public static double inRange(String name, double value, double least, double greatest) {
        if (!(value >= least && value <= greatest)) {
            throw new IllegalArgumentException(
                    name + " is " + value + ", must be " + least + " to " + greatest);
        }
        return value;
    }

    /** Refuses NaN, infinity, zero and less. */
    public static double positive(String name, double value) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " is " + value + ", must be above 0");
        }
        return value;
    }

    /** Refuses NaN, infinity and less than zero. */
    public static double notNegative(String name, double value) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " is " + value + ", must be 0 or more");
        }
        return value;
    }

    /** Refuses a name that is null or blank. */
    public static String named(String what, String text) {
        if (Objects.requireNonNull(text, what).isBlank()) {
            throw new IllegalArgumentException(what + " is blank, must be a name");
        }
        return text;
    }

    /** Refuses a state that the caller should have made sure of. */
    public static void that(boolean holds, String whatMustHold) {
        if (!holds) {
            throw new IllegalArgumentException(whatMustHold);
        }
    }

    /**
     * Refuses a state; the sentence is only built where it is needed, for values made by thousands.
     */
    public static void that(boolean holds, Supplier<String> whatMustHold) {
        if (!holds) {
            throw new IllegalArgumentException(whatMustHold.get());
        }
    }

    /**
     * Refuses a series that holds NaN or anything outside the closed range, and says at which
     * index.
     */
    public static void eachInRange(String name, double[] values, double least, double greatest) {
        for (int i = 0; i < values.length; i++) {
            if (!(values[i] >= least && values[i] <= greatest)) {
                inRange(name + "[" + i + "]", values[i], least, greatest);
            }
        }
    }
}
