/**
 * Local pages and JSON for the people at the farm.
 *
 * <p>In come requests from this machine or its own network. Out come the queue, the fields, the
 * windows and the load sheet as pages and as JSON; entries of the crew go back as records.
 * {@code daemon} starts and stops it.
 */
@NullMarked
package rainward.board;

import org.jspecify.annotations.NullMarked;
