/** Chance and amount of rain, period by period, that traces have to keep. */
@NullMarked
package rainward.weather.marginal;

import org.jspecify.annotations.NullMarked;
