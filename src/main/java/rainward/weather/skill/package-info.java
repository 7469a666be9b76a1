/** How good past forecasts were, and what they teach: scores, reliability, recalibration. */
@NullMarked
package rainward.weather.skill;

import org.jspecify.annotations.NullMarked;
