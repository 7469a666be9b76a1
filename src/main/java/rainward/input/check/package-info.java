/**
 * Whether it came up.
 *
 * <p>In come counts of plants, what was sown, when it may be up. Out come the day to look, the
 * stand against its target, a verdict with its cause, and what is still worth sowing. {@code store}
 * keeps the result beside the chance given at seeding.
 */
@NullMarked
package rainward.input.check;

import org.jspecify.annotations.NullMarked;
