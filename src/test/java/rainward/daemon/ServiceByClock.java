package rainward.daemon;

import java.time.Clock;
import java.time.Duration;

/** The program as it is, in a process of its own, by a clock that is ahead of the PC's. */
final class ServiceByClock {

    /** How far ahead [ms]. */
    static final String AHEAD = "rainward.test.aheadMs";

    private ServiceByClock() {}

    public static void main(String[] args) {
        Clock clock = Clock.offset(Clock.systemUTC(), Duration.ofMillis(Long.getLong(AHEAD)));
        System.exit(Main.commandLine(clock).execute(args));
    }
}
