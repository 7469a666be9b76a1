/**
 * The morning brief and the alert as values: what is to be said, before it is put in words.
 *
 * <p>In come a plan, readiness, windows, inputs and the zone of the farm. Out come a brief and
 * alerts whose names can harm no page and no mail. Nothing is decided here. {@code page} and
 * {@code picture} below write them, {@code post} addresses them.
 */
@NullMarked
package rainward.brief;

import org.jspecify.annotations.NullMarked;
