/**
 * A plan held against the rules, one by one, by other means than those that made it.
 *
 * <p>In come a planning problem and a plan. Out come the rules that it breaks, in words; none for a
 * plan that may be given out. It shares with the planner only how long work and roads take.
 */
@NullMarked
package rainward.queue.check;

import org.jspecify.annotations.NullMarked;
