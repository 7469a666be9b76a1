/**
 * How a brief is made: who does what, what changed, what to beware of, what to ask.
 *
 * <p>In come the outlook of a round, what its names mean, the brief before and the books. Out comes
 * one {@link rainward.brief.Brief}. {@code words} and the pages below put it in words.
 */
@NullMarked
package rainward.brief.making;

import org.jspecify.annotations.NullMarked;
