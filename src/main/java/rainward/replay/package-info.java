/**
 * Seasons run again, to learn which policy would have served the crew.
 *
 * <p>In come a crew, its fields and the days of stations. Out comes each season by every policy, on
 * the same truth ({@code truth}), forecasts and luck, worked by the same simulated crew
 * ({@code crew}) and judged twice ({@code score}); for the same seed always the same. The people
 * who tune the planner read it; {@code daemon} offers it as a command.
 */
@NullMarked
package rainward.replay;

import org.jspecify.annotations.NullMarked;
