package rainward.daemon.demo;

import java.time.Instant;
import java.time.InstantSource;

/** A clock that stands until it is set on. */
final class DemoClock implements InstantSource {

    private volatile Instant now;

    DemoClock(Instant start) {
        this.now = start;
    }

    @Override
    public Instant instant() {
        return now;
    }

    void setTo(Instant later) {
        now = later;
    }
}
