/**
 * The crew's queue: which stage of which field, by whom, with which machine, at what hour.
 *
 * <p>In come open stages, worth by seeding hour, machines, people, shifts and travel. Out comes a
 * plan that breaks no hard rule, with a justification for each item, the same for the same seed.
 * {@code window}, {@code cycle} and {@code brief} read it.
 */
@NullMarked
package rainward.queue;

import org.jspecify.annotations.NullMarked;
