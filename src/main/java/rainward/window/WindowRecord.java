package rainward.window;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What has been decided so far: all that the next decision needs, and enough to run it again.
 *
 * @param open windows that are open
 * @param sent when messages went out, in order of time
 * @param closed ids used before, so that none is given twice, the newest last
 */
public record WindowRecord(List<Open> open, List<Instant> sent, List<String> closed) {

    /** Nothing decided yet. */
    public static final WindowRecord NOTHING = new WindowRecord(List.of(), List.of(), List.of());

    public WindowRecord {
        open = List.copyOf(open);
        sent = List.copyOf(sent);
        closed = List.copyOf(closed);
    }

    /**
     * An open window.
     *
     * @param latest as it was seen last
     * @param told as it was in the last message; empty while none went out
     * @param openedAt when it opened
     */
    public record Open(StormWindow latest, Optional<StormWindow> told, Instant openedAt) {}
}
