/**
 * The weather that a season run again has, and the forecasts that were to be had of it.
 *
 * <p>In come the days of a station. Out come the hours at each property and forecasts whose skill
 * falls with lead as that of public ones; none ever sees more of the truth than its skill says.
 */
@NullMarked
package rainward.replay.truth;

import org.jspecify.annotations.NullMarked;
