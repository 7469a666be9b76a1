/**
 * Questions sent and answered politely: conditions, few tries, pauses, limits.
 *
 * <p>In come one question and a reader. Out come a readable answer with the copy it came from, or a
 * reason why there is none. One class per service asks through it.
 */
@NullMarked
package rainward.feed.wire;

import org.jspecify.annotations.NullMarked;
