/**
 * The soil column against measurements.
 *
 * <p>In come the days of a station: weather, and what its sensors saw at 5 cm. Out come
 * correlation, unbiased error and bias of the column, of persistence and of a single bucket, side
 * by side. The command line prints them.
 */
@NullMarked
package rainward.soil.verify;

import org.jspecify.annotations.NullMarked;
