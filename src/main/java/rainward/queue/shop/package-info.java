/**
 * Work in whole minutes and indices, and the rules by which an order becomes a schedule.
 *
 * <p>In come items with their chains of tasks, machines, people and open hours, as integers from
 * the start of the horizon. Out come placements and their value. {@code search} varies the order.
 */
@NullMarked
package rainward.queue.shop;

import org.jspecify.annotations.NullMarked;
