/**
 * How long the heavy steps take: the planner, a season of soil, one brief.
 *
 * <p>In come farms and weather of a fixed seed; out come medians on the terminal and in
 * {@code target/bench/benchmarks.json}. A benchmark of a planner also reports what its plan is
 * worth, since a fast bad plan is no gain. No test reads a clock; what may take how long is looked
 * at here.
 */
@NullMarked
package rainward.bench;

import org.jspecify.annotations.NullMarked;
