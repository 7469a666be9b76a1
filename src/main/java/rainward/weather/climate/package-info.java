/** The usual weather of a region, and the course of a day drawn from it where hours are unknown. */
@NullMarked
package rainward.weather.climate;

import org.jspecify.annotations.NullMarked;
