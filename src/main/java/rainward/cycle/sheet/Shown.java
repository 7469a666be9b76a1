package rainward.cycle.sheet;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;

/** Figures as a table shows them. */
public final class Shown {

    private Shown() {}

    /** By the farm's clock. */
    public static OffsetDateTime local(Instant at, ZoneId zone) {
        return at.atZone(zone).toOffsetDateTime();
    }

    /** The nearest of so many steps a unit. */
    static double rounded(double value, int steps) {
        return Math.round(value * steps) / (double) steps;
    }
}
