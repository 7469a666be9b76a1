/**
 * How much lime a field needs, how much of it this year, and what can be said of its pH.
 *
 * <p>In come a soil test, a region's published recommendation, the quality of a lime and what was
 * spread before. Out come amounts, what stays owed, and a pH as a range. {@code input.load} reads
 * it.
 */
@NullMarked
package rainward.input.lime;

import org.jspecify.annotations.NullMarked;
