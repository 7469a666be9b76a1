/**
 * Why an order is as it is, what changed in it, and what another would bring.
 *
 * <p>In come a problem and its plan. Out come what is binding for each item, what waiting would
 * lose, changes with their gain, and the problem that a person asks about. {@code brief} reads it.
 */
@NullMarked
package rainward.queue.reasons;

import org.jspecify.annotations.NullMarked;
