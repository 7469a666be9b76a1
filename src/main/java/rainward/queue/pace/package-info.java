/**
 * How fast work goes: on the field, on the road, over the hours of a week, over a season.
 *
 * <p>In come machines, traces and ground. Out come hours of work and of driving, hours in which
 * work is stopped, and the chance to be done by a date. {@code model} and {@code cycle} read them.
 */
@NullMarked
package rainward.queue.pace;

import org.jspecify.annotations.NullMarked;
