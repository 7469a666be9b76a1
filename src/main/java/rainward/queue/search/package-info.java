/**
 * Simulated annealing over orders and choices.
 *
 * <p>In comes something that values a genome. Out comes the best genome found within an effort, the
 * same for the same seed. Nothing here knows a field from a flow shop.
 */
@NullMarked
package rainward.queue.search;

import org.jspecify.annotations.NullMarked;
