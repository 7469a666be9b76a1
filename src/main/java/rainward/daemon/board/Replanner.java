package rainward.daemon.board;

import java.time.Duration;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rainward.daemon.service.Rounds;
import rainward.daemon.service.SpareMemory;

/** Works the order out again after words were taken down: once for all that came meanwhile. */
final class Replanner implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(Replanner.class);

    /** A round fills some hundred megabytes; they are given back once nobody taps any more. */
    private static final Duration QUIET = Duration.ofSeconds(10);

    /** How soon the board shows what commands beside the service wrote down. */
    private static final Duration LOOKS = Duration.ofSeconds(10);

    private final Rounds rounds;
    private final Standings standings;
    private final LongSupplier wordsSaid;
    private volatile long wordsReckoned;
    private final AtomicBoolean asked = new AtomicBoolean();
    private final ScheduledExecutorService planner = planner();
    private @Nullable ScheduledFuture<?> givingBack;

    /**
     * A replanner.
     *
     * @param rounds that make the order
     * @param standings that show it
     * @param wordsSaid grows with every word that is written down, by whomever
     */
    Replanner(Rounds rounds, Standings standings, LongSupplier wordsSaid) {
        this.rounds = rounds;
        this.standings = standings;
        this.wordsSaid = wordsSaid;
    }

    /**
     * Ends at once when it is shut: memory that was to be given back later is no reason to stay.
     */
    private static ScheduledExecutorService planner() {
        ScheduledThreadPoolExecutor planner = new ScheduledThreadPoolExecutor(1, work -> {
            Thread thread = new Thread(work, "board-order");
            thread.setDaemon(true);
            return thread;
        });
        planner.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
        return planner;
    }

    /** From now on words of commands beside the service move the order too. */
    void watch() {
        wordsReckoned = wordsSaid.getAsLong();
        ScheduledFuture<?> unused = planner.scheduleWithFixedDelay(
                this::lookForWords, LOOKS.toSeconds(), LOOKS.toSeconds(), TimeUnit.SECONDS);
    }

    private void lookForWords() {
        try {
            if (wordsSaid.getAsLong() != wordsReckoned) {
                replan("a command beside the service");
            }
        } catch (RuntimeException e) {
            LOG.warn("words of commands cannot be looked for: {}", e.getMessage());
        }
    }

    /** The first round of a service that just started: shown, not given out. */
    void look() {
        planner.execute(() -> attempt(rounds::look));
    }

    /** The order is worked out anew soon. */
    void replan(String cause) {
        if (!asked.compareAndSet(false, true)) {
            return;
        }
        try {
            planner.execute(() -> {
                asked.set(false);
                wordsReckoned = wordsSaid.getAsLong();
                attempt(() -> rounds.replan(cause));
            });
        } catch (RejectedExecutionException e) {
            // The service ends; what was said is written down, and the next start reckons with it.
            LOG.info("no order is worked out any more, the service ends");
        }
    }

    private void attempt(Runnable round) {
        try {
            round.run();
        } catch (RuntimeException e) {
            LOG.error("the order could not be worked out", e);
            standings.failed();
        }
        ScheduledFuture<?> before = givingBack;
        if (before != null) {
            before.cancel(false);
        }
        if (!planner.isShutdown()) {
            givingBack =
                    planner.schedule(SpareMemory::giveBack, QUIET.toSeconds(), TimeUnit.SECONDS);
        }
    }

    @Override
    public void close() {
        planner.shutdown();
        try {
            if (!planner.awaitTermination(20, TimeUnit.SECONDS)) {
                planner.shutdownNow();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
