/**
 * Briefs and alerts in words: plain text, page, short form and calendar.
 *
 * <p>In come values that are finished and harmless, and the units their reader knows. Out come
 * strings. {@code post} puts them into letters.
 */
@NullMarked
package rainward.brief.page;

import org.jspecify.annotations.NullMarked;
