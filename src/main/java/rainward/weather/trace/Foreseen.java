package rainward.weather.trace;

import java.util.Optional;
import rainward.farm.Require;

/**
 * Traces, and how the weather may go on after them, on a smaller number of courses that several
 * traces share.
 *
 * @param traces that are planned by
 * @param later from their end on; empty where nothing is supposed
 */
public record Foreseen(Traces traces, Optional<Traces> later) {

    public Foreseen {
        Require.that(
                later.isEmpty() || later.get().start().equals(traces.timeOf(traces.hours())),
                "later weather does not start where the traces end");
    }
}
