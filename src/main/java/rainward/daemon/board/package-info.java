/**
 * The board's house: what a running service hands to the pages, and the desks that take down what
 * is said on them. In: an open office and its rounds. Out: standing values, told anew after each
 * round.
 */
@NullMarked
package rainward.daemon.board;

import org.jspecify.annotations.NullMarked;
