/**
 * One kind of seed on one trace: germination, growth against the drying front, heat.
 *
 * <p>{@code stand.model} reads it.
 */
@NullMarked
package rainward.stand.seedling;

import org.jspecify.annotations.NullMarked;
