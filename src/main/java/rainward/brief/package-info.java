/**
 * The morning brief and the alert, first as values, then as text, HTML and pictures.
 *
 * <p>In come a plan, readiness, windows, inputs and the zone of the farm. Out come finished pages.
 * Nothing is decided here: it is formatting and no more. {@code mail} sends what this package
 * writes, {@code board} shows it.
 */
@NullMarked
package rainward.brief;

import org.jspecify.annotations.NullMarked;
