package rainward.daemon.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class WatchdogTest {

    private final AtomicInteger ended = new AtomicInteger();

    @Test
    void workThatStandsStillEndsTheProcessOnce() {
        try (Watchdog watchdog = Watchdog.start(Duration.ofMillis(5), 3, ended::incrementAndGet)) {
            watchdog.alive();
            await().atMost(Duration.ofSeconds(20)).until(() -> ended.get() == 1);
        }
    }

    @Test
    void signsOfLifeKeepItFromThat() throws InterruptedException {
        try (Watchdog watchdog =
                Watchdog.start(Duration.ofMillis(20), 10_000, ended::incrementAndGet)) {
            for (int i = 0; i < 10; i++) {
                watchdog.alive();
                Thread.sleep(5);
            }
        }
        assertThat(ended).hasValue(0);
    }
}
