/**
 * Briefs and alerts as plain text at 72 columns and as one text message.
 *
 * <p>In come values and their words. Out come strings that stand alone. {@code post} puts them into
 * letters.
 */
@NullMarked
package rainward.brief.plain;

import org.jspecify.annotations.NullMarked;
