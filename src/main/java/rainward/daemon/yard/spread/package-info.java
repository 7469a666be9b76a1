/** Lime and fertilizer of every field, out of the records and out of what is in the shed. */
@NullMarked
package rainward.daemon.yard.spread;

import org.jspecify.annotations.NullMarked;
