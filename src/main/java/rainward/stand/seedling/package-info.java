/**
 * One kind of seed on one trace
 *
 * <p>germination, growth against the drying front, heat.:{@code stand.model} reads it.
 */
@NullMarked
package rainward.stand.seedling;

import org.jspecify.annotations.NullMarked;
