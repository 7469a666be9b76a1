/**
 * Seasons run again, to learn which policy would have served the crew.
 *
 * <p>In come the weather that came true, forecasts of a given skill, a farm and a policy for the
 * queue. Out come the acres established and the scores of the forecasts, for the same seed always
 * the same. The people who tune the planner read it; {@code daemon} offers it as a command.
 */
@NullMarked
package rainward.replay;

import org.jspecify.annotations.NullMarked;
