/**
 * Layers of any service turned into hours without gaps.
 *
 * <p>In come spells of temperature, humidity, wind, sky and rain. Out come forecast series, with
 * every gap that was filled told in a note.
 */
@NullMarked
package rainward.feed.hourly;

import org.jspecify.annotations.NullMarked;
