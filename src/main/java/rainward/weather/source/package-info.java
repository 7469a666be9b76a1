/**
 * Forecasts as they come in: what a service answered, when it was issued, how the service fares.
 *
 * <p>The interfaces that {@code feed} answers stand here.
 */
@NullMarked
package rainward.weather.source;

import org.jspecify.annotations.NullMarked;
