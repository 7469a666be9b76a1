/**
 * Air, sun and what they take from the ground: sun times, radiation under cloud, reference
 * evapotranspiration, hour by hour.
 */
@NullMarked
package rainward.weather.sky;

import org.jspecify.annotations.NullMarked;
