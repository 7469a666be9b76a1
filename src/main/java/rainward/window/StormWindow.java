package rainward.window;

import java.time.Instant;
import java.util.List;
import java.util.SortedSet;

/**
 * A stretch that ends with the arrival of useful rain.
 *
 * @param id stays the same from opening to closing
 * @param properties it holds for, neighbours merged
 * @param chance that useful rain comes within the lead time, 0 to 1
 * @param arrival when it comes
 * @param amount how much, where it comes
 * @param hardRainChance that it comes hard enough to wash out, 0 to 1
 * @param fits fields that can be seeded before it, in order
 * @param leave fields there that cannot
 */
public record StormWindow(
        String id,
        SortedSet<String> properties,
        double chance,
        Arrival arrival,
        Amount amount,
        double hardRainChance,
        List<Fit> fits,
        List<String> leave) {

    public StormWindow {
        fits = List.copyOf(fits);
        leave = List.copyOf(leave);
    }

    /**
     * Arrival of the first useful rain, over the traces where it comes: one in ten is earlier...
     */
    public record Arrival(Instant p10, Instant p50, Instant p90) {}

    /** Rain of the event, over the traces where it comes [mm]. */
    public record Amount(double p10Mm, double p50Mm, double p90Mm) {}

    /**
     * A field that fits.
     *
     * @param field its name
     * @param plannedStart of seeding, by the order
     * @param lastSafeStart of seeding, so that it is done before the early arrival
     * @param chance of a stand when seeded as planned
     */
    public record Fit(String field, Instant plannedStart, Instant lastSafeStart, double chance) {}
}
