/**
 * What came of a season, and which policy did better.
 *
 * <p>In comes what each policy seeded when. Out come acres established by the stand model and by a
 * plain rule of its own, and comparisons paired by season.
 */
@NullMarked
package rainward.replay.score;

import org.jspecify.annotations.NullMarked;
