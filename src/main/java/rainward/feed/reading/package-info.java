/**
 * Values out of documents that cannot be trusted: numbers, times, units, spells.
 *
 * <p>In come bytes of JSON. Out come values in SI units with a place in time, and notes on what was
 * left out and why. Every service's own reader builds on these.
 */
@NullMarked
package rainward.feed.reading;

import org.jspecify.annotations.NullMarked;
