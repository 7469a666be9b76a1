/**
 * Forecasts and observations fetched from public services over HTTP.
 *
 * <p>In come places and the settings of each service; one class speaks with one service. Out come
 * forecast series with their time of issue, or a value that says why there is none. A service that
 * is down is such a value, never an exception. {@code daemon} hands it to the core.
 */
@NullMarked
package rainward.feed;

import org.jspecify.annotations.NullMarked;
