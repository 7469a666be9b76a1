/**
 * The yard: what goes on the trucks, out of which shed, and what it was used for.
 *
 * <p>Each desk reads the records and the settings and asks the core; commands, brief and board read
 * the desks.
 */
@NullMarked
package rainward.daemon.yard;

import org.jspecify.annotations.NullMarked;
