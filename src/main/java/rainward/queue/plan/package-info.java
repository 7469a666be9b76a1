/**
 * The planner: the order that gets the most ground established.
 *
 * <p>In comes a planning problem and an effort. Out comes a plan that breaks no hard rule, the same
 * for the same seed, and of each field left out, why.
 */
@NullMarked
package rainward.queue.plan;

import org.jspecify.annotations.NullMarked;
