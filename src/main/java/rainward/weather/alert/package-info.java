/** Public warnings: which stand, which were replaced or cancelled, and which touch a place. */
@NullMarked
package rainward.weather.alert;

import org.jspecify.annotations.NullMarked;
