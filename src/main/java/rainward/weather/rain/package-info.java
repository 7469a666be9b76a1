/**
 * Rain as it is told: amounts and chances by interval, observations with their origin, and the
 * hours that they are shared over.
 */
@NullMarked
package rainward.weather.rain;

import org.jspecify.annotations.NullMarked;
