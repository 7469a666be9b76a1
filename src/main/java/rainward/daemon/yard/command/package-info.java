/**
 * Commands of the yard: load, stock, seeder, spread, season, export, and what goes into the books.
 *
 * <p>In come words typed; out come text or JSON from the desks of {@code yard}.
 */
@NullMarked
package rainward.daemon.yard.command;

import org.jspecify.annotations.NullMarked;
