/**
 * What textures say of a soil: published equations for the water it holds and passes, its heat, its
 * layers.
 *
 * <p>{@code soil} and its parts read it; it reads {@code farm} alone.
 */
@NullMarked
package rainward.soil.property;

import org.jspecify.annotations.NullMarked;
