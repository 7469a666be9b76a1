/**
 * How the season goes: what became of each field, what is done and left, whether it will finish.
 *
 * <p>In come the records and the plan; out come values that commands, brief and papers show.
 */
@NullMarked
package rainward.daemon.yard.season;

import org.jspecify.annotations.NullMarked;
