/**
 * A crew that works through a season by one policy or another.
 *
 * <p>In come fields, machines, the true weather and what a policy says comes next. Out comes what
 * was seeded when. Rain, wet soil and breakdowns stop the work as they stop a real crew.
 */
@NullMarked
package rainward.replay.crew;

import org.jspecify.annotations.NullMarked;
