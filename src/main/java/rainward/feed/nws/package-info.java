/**
 * The US National Weather Service: point to cell, cell to raw layers.
 *
 * <p>In come a place and a moment. Out come a pull with its outcome; the chain in {@code feed}
 * asks.
 */
@NullMarked
package rainward.feed.nws;

import org.jspecify.annotations.NullMarked;
