/**
 * What is to be spread on a field this year, and what is owed to later years.
 *
 * <p>In come its soil test, what was spread and carried off since, and whose advice holds. Out come
 * a dose of lime, a blend, the pH to expect as a range, and gaps. {@code input.load} loads it.
 */
@NullMarked
package rainward.input.spread;

import org.jspecify.annotations.NullMarked;
