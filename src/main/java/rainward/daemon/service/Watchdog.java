package rainward.daemon.service;

import java.time.Duration;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Ends a process whose work stands still, so that what started it starts it again. It counts its
 * own looks and reads no clock: a machine that slept for a night, or whose clock was set, is not
 * taken for one that stands still.
 */
final class Watchdog implements AutoCloseable {

    /** Exit code (EX_SOFTWARE of sysexits.h) that service managers answer with a new start. */
    static final int STANDS_STILL = 70;

    private static final Logger LOG = LoggerFactory.getLogger(Watchdog.class);

    private final AtomicInteger looksWithout = new AtomicInteger();
    private final int most;
    private final Runnable end;
    private final Thread thread;

    private Watchdog(Duration every, int most, Runnable end) {
        this.most = most;
        this.end = end;
        this.thread = new Thread(() -> watch(every), "watchdog");
        thread.setDaemon(true);
    }

    /**
     * Watches from now on.
     *
     * @param every between two looks
     * @param most looks without a sign of life that are let pass
     * @param end what is done then
     */
    static Watchdog start(Duration every, int most, Runnable end) {
        Watchdog watchdog = new Watchdog(every, most, end);
        watchdog.thread.start();
        return watchdog;
    }

    /** Ends this process at once; nothing that was confirmed is lost by it. */
    static void endProcess() {
        Runtime.getRuntime().halt(STANDS_STILL);
    }

    /** A sign of life. */
    void alive() {
        looksWithout.set(0);
    }

    private void watch(Duration every) {
        try {
            while (looksWithout.incrementAndGet() <= most) {
                Thread.sleep(every.toMillis());
            }
            LOG.error("The work stands still; the process ends to be started again. {}", threads());
            end.run();
        } catch (InterruptedException closed) {
            Thread.currentThread().interrupt();
        }
    }

    /** Where each thread stands, for whoever mends the cause. */
    private static String threads() {
        StringBuilder all = new StringBuilder();
        for (Map.Entry<Thread, StackTraceElement[]> entry :
                Thread.getAllStackTraces().entrySet()) {
            if (entry.getValue().length > 0) {
                all.append(entry.getKey().getName())
                        .append(" at ")
                        .append(entry.getValue()[0])
                        .append("; ");
            }
        }
        return all.toString();
    }

    @Override
    public void close() {
        thread.interrupt();
    }
}
