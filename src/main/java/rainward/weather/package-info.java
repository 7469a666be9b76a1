/**
 * Hourly weather: what was forecast and when, what was observed, and what may yet come.
 *
 * <p>In come forecast series with their time of issue, gauge readings and a seed for the random
 * numbers. Out come rain traces that keep the published probability and amount of each period, sun
 * times, radiation and reference evapotranspiration. {@code soil} runs its balance on every trace.
 */
@NullMarked
package rainward.weather;

import org.jspecify.annotations.NullMarked;
