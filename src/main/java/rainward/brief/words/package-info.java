/**
 * Briefs and alerts in sentences that page, plain text and short form share.
 *
 * <p>In come values that are finished and harmless, and the units and zone of their reader. Out
 * come lines without markup and without width. {@code page}, {@code plain} and {@code calendar} lay
 * them out.
 */
@NullMarked
package rainward.brief.words;

import org.jspecify.annotations.NullMarked;
