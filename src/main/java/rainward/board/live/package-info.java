/**
 * Tells open pages that something changed. In: a word from the house. Out: server-sent events that
 * carry a number and nothing else; pages fetch what they show themselves.
 */
@NullMarked
package rainward.board.live;

import org.jspecify.annotations.NullMarked;
