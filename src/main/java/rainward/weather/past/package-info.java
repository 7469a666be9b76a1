/** The weather that was, put together from all that is known of it, with the origin of each day. */
@NullMarked
package rainward.weather.past;

import org.jspecify.annotations.NullMarked;
