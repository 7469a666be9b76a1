/**
 * What was measured, bought, used and said about inputs; one line each, never rewritten.
 *
 * <p>A correction is a line of its own, and a line that came with work goes where that work goes.
 */
@NullMarked
package rainward.store.ledger;

import org.jspecify.annotations.NullMarked;
