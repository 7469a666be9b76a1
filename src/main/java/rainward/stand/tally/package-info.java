/**
 * What comes up, judged by seeding step and summed over traces, and what the calendar makes of it.
 *
 * <p>{@code stand.model} reads it.
 */
@NullMarked
package rainward.stand.tally;

import org.jspecify.annotations.NullMarked;
