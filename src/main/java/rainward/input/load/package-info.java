/**
 * What goes on the trucks today.
 *
 * <p>In come a plan, the roster, what is in the shed and how boxes and spreaders are built. Out
 * comes a sheet by machine in the order of the work, with totals, spare and gaps, and the same as
 * text. {@code brief} and {@code board} show it; {@code input.stock} adds up its totals.
 */
@NullMarked
package rainward.input.load;

import org.jspecify.annotations.NullMarked;
