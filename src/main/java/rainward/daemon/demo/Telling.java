package rainward.daemon.demo;

import java.io.PrintWriter;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * Tells what happens as it happens: one line each, the hour before it; on a terminal with a pause.
 */
final class Telling {

    private static final DateTimeFormatter WHEN =
            DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.US);

    private final PrintWriter out;
    private final ZoneId zone;
    private final boolean terminal;

    Telling(PrintWriter out, ZoneId zone, boolean terminal) {
        this.out = out;
        this.zone = zone;
        this.terminal = terminal;
    }

    void say(Instant at, String words) {
        out.println(WHEN.format(at.atZone(zone)) + "  " + words);
        out.flush();
        pause();
    }

    /** A line that belongs to the one before. */
    void add(String words) {
        out.println("                   " + words);
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
