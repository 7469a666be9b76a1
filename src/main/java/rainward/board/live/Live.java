package rainward.board.live;

import io.javalin.http.sse.SseClient;

import java.time.Duration;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/** Pages that listen. One thread writes to all of them, so that nobody waits for a slow one. */
public final class Live implements AutoCloseable {

    private static final int MOST_LISTENERS = 200;

    /** Often enough that a telephone notices a lost connection while it is still in the hand. */
    private static final Duration BEAT = Duration.ofSeconds(25);

    private static final String TURN = "turn";

    private final Set<SseClient> listeners = ConcurrentHashMap.newKeySet();
    private final LongSupplier turn;
    private final ScheduledExecutorService writer =
            Executors.newSingleThreadScheduledExecutor(work -> {
                Thread thread = new Thread(work, "board-live");
                thread.setDaemon(true);
                return thread;
            });

    /**
     * Listeners.
     *
     * @param turn the number that grows with every change
     */
    public Live(LongSupplier turn) {
        this.turn = turn;
        writer.scheduleAtFixedRate(
                this::beat, BEAT.toSeconds(), BEAT.toSeconds(), TimeUnit.SECONDS);
    }

    /** Takes a page in and tells it where things stand. */
    public void join(SseClient page) {
        if (listeners.size() >= MOST_LISTENERS) {
            page.close();
            return;
        }
        page.keepAlive();
        page.onClose(() -> listeners.remove(page));
        listeners.add(page);
        page.sendEvent(TURN, String.valueOf(turn.getAsLong()));
    }

    /** Tells every page that something changed. */
    public void changed() {
        if (writer.isShutdown()) {
            return;
        }
        writer.execute(() -> {
            String now = String.valueOf(turn.getAsLong());
            listeners.forEach(page -> page.sendEvent(TURN, now));
        });
    }

    private void beat() {
        listeners.forEach(page -> page.sendComment("here"));
    }

    public int listening() {
        return listeners.size();
    }

    @Override
    public void close() {
        writer.shutdownNow();
        listeners.forEach(SseClient::close);
    }
}
