/**
 * Invented days of work, to try the planner on.
 *
 * <p>In comes a kind of weather and a seed. Out comes a planning problem with fields, crew and
 * worth by the hour, the same for the same seed. Tests and the planner's benchmark read it.
 */
@NullMarked
package rainward.queue.sample;

import org.jspecify.annotations.NullMarked;
