/**
 * A planning problem and the plan that answers it, as values.
 *
 * <p>In come fields with worth by seeding hour, machines, people, prices and the last order. Out
 * comes a plan with an item for each piece of work. All of the queue and its readers share these.
 */
@NullMarked
package rainward.queue.problem;

import org.jspecify.annotations.NullMarked;
