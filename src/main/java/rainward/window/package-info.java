/**
 * Storm windows: the hours left for seeding ahead of rain that is on its way.
 *
 * <p>In come weather traces, the plan, what has already been sent and the instant of the decision.
 * Out come windows with a range of arrival and a last safe start for each field, and a decision to
 * send an alert or to keep still, always with its reason. {@code cycle} and {@code brief} read
 * them.
 */
@NullMarked
package rainward.window;

import org.jspecify.annotations.NullMarked;
