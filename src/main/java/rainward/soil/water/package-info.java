/**
 * The water of a column: rain on its way in, evaporation, roots, drainage and capillarity, on all
 * traces at once.
 *
 * <p>{@code soil.heat} and {@code soil.column} read it.
 */
@NullMarked
package rainward.soil.water;

import org.jspecify.annotations.NullMarked;
