/**
 * What fell and how the air was: gridded rain and stations.
 *
 * <p>In come a place and days. Out come rain by hour or day with its source; {@code daemon} keeps
 * it and the core's rules choose between sources.
 */
@NullMarked
package rainward.feed.past;

import org.jspecify.annotations.NullMarked;
