/**
 * Water and warmth in the soil of one field.
 *
 * <p>In come a soil profile, its state at a given instant and weather traces by the hour. Out come
 * water by layer, temperature by depth, and the two verdicts of trafficability (it carries the
 * machine) and workability (it is fit to till and sow). {@code stand} reads the seedbed hour by
 * hour.
 */
@NullMarked
package rainward.soil;

import org.jspecify.annotations.NullMarked;
