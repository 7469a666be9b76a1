/**
 * Soil of a place out of public surveys.
 *
 * <p>In comes a place. Out come sand, clay, organic matter and slope with source and date, for
 * {@code daemon} to keep and the user to confirm.
 */
@NullMarked
package rainward.feed.soil;

import org.jspecify.annotations.NullMarked;
