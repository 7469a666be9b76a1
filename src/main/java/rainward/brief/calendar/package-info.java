/**
 * The crew's work as a calendar (RFC 5545).
 *
 * <p>In comes a brief. Out comes the text of a calendar file. {@code post} attaches it.
 */
@NullMarked
package rainward.brief.calendar;

import org.jspecify.annotations.NullMarked;
