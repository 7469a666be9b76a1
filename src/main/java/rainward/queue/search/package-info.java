/**
 * The search for a good order, in whole minutes and numbers only.
 *
 * <p>In come items with their chains of tasks, machines, people and open hours, all as integers
 * from the start of the horizon. Out comes the best order found within an effort. Nothing here
 * knows a field from a flow shop; {@code queue} translates both ways.
 */
@NullMarked
package rainward.queue.search;

import org.jspecify.annotations.NullMarked;
