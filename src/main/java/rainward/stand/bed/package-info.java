/**
 * A trace cut into steps as the seed meets it, with what hard rain does to it.
 *
 * <p>{@code stand.seedling} and {@code stand.model} read it.
 */
@NullMarked
package rainward.stand.bed;

import org.jspecify.annotations.NullMarked;
