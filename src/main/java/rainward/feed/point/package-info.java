/**
 * Services that answer a place with a forecast in one question.
 *
 * <p>In come a place and a moment. Out come a pull with its outcome, or the members of an ensemble;
 * the chain in {@code feed} asks.
 */
@NullMarked
package rainward.feed.point;

import org.jspecify.annotations.NullMarked;
