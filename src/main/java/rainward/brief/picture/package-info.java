/**
 * Pictures of the rain ahead, of a property and of a field.
 *
 * <p>In come panels of the brief and letters as outlines. Out come images in memory. {@code post}
 * puts them into letters, an edge turns them into PNG.
 */
@NullMarked
package rainward.brief.picture;

import org.jspecify.annotations.NullMarked;
