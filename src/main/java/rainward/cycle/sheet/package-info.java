/**
 * What a round says as tables, times in the farm's zone: what commands print as JSON.
 *
 * <p>In comes an outlook. Out come order, readiness and weather as records that JSON is made of.
 */
@NullMarked
package rainward.cycle.sheet;

import org.jspecify.annotations.NullMarked;
