/**
 * One turn of the whole computation, from a forecast to a plan and its windows.
 *
 * <p>In come farm, forecast, soil states, records and the instant of the turn. Out come traces,
 * soil, stand, readiness, plan and windows, all from that one instant. It only composes the
 * packages before it. {@code replay} and {@code daemon} share it, so that a season run again goes
 * through the same steps as the service.
 */
@NullMarked
package rainward.cycle;

import org.jspecify.annotations.NullMarked;
