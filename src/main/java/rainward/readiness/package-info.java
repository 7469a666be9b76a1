/**
 * How ready a field is now, from 0 to 100, and why.
 *
 * <p>In come the chance of a stand, the soil's state and the stages still open. Out come a score
 * with its parts for rain, moisture and heat, the gates that hold the field back and one reason in
 * words. {@code queue} and {@code brief} read it.
 */
@NullMarked
package rainward.readiness;

import org.jspecify.annotations.NullMarked;
