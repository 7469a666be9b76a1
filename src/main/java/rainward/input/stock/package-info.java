/**
 * What is in the shed, and when it runs out under the plan.
 *
 * <p>In come deliveries, uses and counts, and the days ahead. Out come what is there, what runs
 * short on which day, and by when to order. {@code brief} tells it.
 */
@NullMarked
package rainward.input.stock;

import org.jspecify.annotations.NullMarked;
