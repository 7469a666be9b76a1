/**
 * What a field should be fed, and with which products.
 *
 * <p>In come soil tests or harvests, recommendations by laboratory method, products with grade and
 * price. Out come targets, the cheapest blend, and loads of the spreader. {@code input.load} reads
 * it.
 */
@NullMarked
package rainward.input.fertilizer;

import org.jspecify.annotations.NullMarked;
