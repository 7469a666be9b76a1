package rainward.queue.problem;

import java.time.Duration;
import rainward.farm.Require;

/**
 * How one stage of one field empties a machine.
 *
 * @param passes over the field; products that do not go together are spread one after the other
 * @param fillCount over the whole field; parts of one where what is left goes on the next field
 * @param road on the way to where it is filled and back, over the whole field
 */
public record Filling(int passes, double fillCount, Duration road) {

    public Filling {
        Require.that(passes >= 1, "passes is " + passes + ", must be 1 or more");
        Require.notNegative("fillCount", fillCount);
        Require.that(!road.isNegative(), "road is below zero");
    }
}
