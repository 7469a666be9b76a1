/**
 * A value that no plan can exceed.
 *
 * <p>In comes a planning problem. Out comes an upper bound that sees every machine. Tests and the
 * benchmark hold plans against it.
 */
@NullMarked
package rainward.queue.bound;

import org.jspecify.annotations.NullMarked;
