/**
 * The ground of one field through the weather that came.
 *
 * <p>In come what was done on the field, what somebody saw who dug there, and the weather since.
 * Out come the soil as it is now, the bed that seed will lie in, and what became of seed under the
 * weather that came since.
 */
@NullMarked
package rainward.cycle.ground;

import org.jspecify.annotations.NullMarked;
