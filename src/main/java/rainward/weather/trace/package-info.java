/**
 * Equally likely hourly courses of rain at all points at once.
 *
 * <p>In come forecasts with their time of issue and a seed for the random numbers. Out come traces
 * that keep the chance and amount of each period; {@code soil} runs its balance on every one.
 */
@NullMarked
package rainward.weather.trace;

import org.jspecify.annotations.NullMarked;
