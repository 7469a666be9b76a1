/**
 * The board: pages and JSON for the office, the shed and the telephone in the cab. In: a
 * {@link rainward.board.house.House} to show and {@link rainward.board.house.Takes} to take words
 * down. Out: a web server on this machine. It imports the core alone; the daemon wires it.
 */
@NullMarked
package rainward.board;

import org.jspecify.annotations.NullMarked;
