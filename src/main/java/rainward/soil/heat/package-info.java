/**
 * The heat of a column under the surface's balance of radiation, air and evaporation.
 *
 * <p>{@code soil.column} reads it.
 */
@NullMarked
package rainward.soil.heat;

import org.jspecify.annotations.NullMarked;
