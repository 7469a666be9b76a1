package rainward.daemon.demo;

import java.io.PrintWriter;
import java.time.Instant;
import java.util.Locale;
import rainward.farm.DayClock;

/**
 * Tells what happens as it happens: one line each, the hour before it; on a terminal with a pause.
 */
final class Telling {

    /** Room for the day and hour before the words. */
    private static final int MARGIN = 22;

    private final PrintWriter out;
    private final DayClock clock;
    private final boolean terminal;

    Telling(PrintWriter out, DayClock clock, boolean terminal) {
        this.out = out;
        this.clock = clock;
        this.terminal = terminal;
    }

    void say(Instant at, String words) {
        out.println(String.format(Locale.ROOT, "%-" + MARGIN + "s%s", clock.dateTime(at), words));
        out.flush();
        pause();
    }

    /** A line that belongs to the one before. */
    void add(String words) {
        out.println(" ".repeat(MARGIN) + words);
        out.flush();
    }

    void heading(String words) {
        out.println();
        out.println(terminal ? "\u001b[1m" + words + "\u001b[0m" : words);
        out.flush();
    }

    private void pause() {
        if (terminal) {
            try {
                Thread.sleep(350);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
