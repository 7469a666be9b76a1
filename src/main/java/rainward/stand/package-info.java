/**
 * Germination, emergence and what may ruin them: the chance of a stand by seeding hour.
 *
 * <p>In come a mix and the seedbed's water and temperature on every trace. Out comes, for each hour
 * in which seed could go in, the chance that enough plants come up, with its losses told apart:
 * false start, wash-out, heat. {@code readiness} and {@code queue} read it.
 */
@NullMarked
package rainward.stand;

import org.jspecify.annotations.NullMarked;
