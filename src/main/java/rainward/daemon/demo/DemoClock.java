package rainward.daemon.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import org.jspecify.annotations.Nullable;

/** A clock that stands until it is set on or let run. */
final class DemoClock implements InstantSource {

    private volatile Instant now;
    private volatile @Nullable Instant runningSince;

    DemoClock(Instant start) {
        this.now = start;
    }

    @Override
    public Instant instant() {
        Instant since = runningSince;
        return since == null ? now : now.plus(Duration.between(since, Instant.now()));
    }

    /** From now on time goes by as it does outside. */
    void letRun() {
        runningSince = Instant.now();
    }

    void setTo(Instant later) {
        now = later;
    }
}
