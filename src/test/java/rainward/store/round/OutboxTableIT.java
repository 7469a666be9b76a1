package rainward.store.round;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import rainward.brief.post.FailedTry;
import rainward.brief.post.OutboxRow;
import rainward.brief.post.Outgoing;
import rainward.store.EachEngine;
import rainward.store.Store;
import rainward.store.TestEngine;

@EachEngine
class OutboxTableIT {

    private static final Instant FIVE = Instant.parse("2026-07-15T09:00:00Z");
    private static final Duration HOLD = Duration.ofMinutes(10);

    @Parameter
    TestEngine engine = TestEngine.SQLITE;

    @TempDir
    Path home;

    private Store store;

    @BeforeEach
    void open() {
        store = engine.open(home);
    }

    @AfterEach
    void close() {
        store.close();
    }

    private static Outgoing letter(String event, String recipient, Instant sendFrom) {
        return new Outgoing(
                new Outgoing.Key(event, recipient),
                Outgoing.Channel.MAIL,
                "Order for the day",
                ("To: " + recipient + "\r\n\r\n" + event).getBytes(StandardCharsets.UTF_8),
                new Outgoing.Times(FIVE, sendFrom, sendFrom.plus(Duration.ofHours(24))));
    }

    private boolean put(Outgoing message) {
        return store.inTransaction(books -> books.outbox().put(message));
    }

    private Optional<String> claimed(Instant now) {
        return store.outbox().claim(now, HOLD).map(row -> row.message().key().event());
    }

    private OutboxRow only() {
        return store.read(books -> books.outbox().since(Instant.EPOCH)).get(0);
    }

    @Test
    void messageComesBackByteForByte() {
        Outgoing letter = letter("brief/2026-07-15", "yard@farm.example", FIVE);
        put(letter);

        OutboxRow row = store.outbox().claim(FIVE, HOLD).orElseThrow();

        assertThat(row.message()).usingRecursiveComparison().isEqualTo(letter);
        assertThat(row.progress())
                .isEqualTo(new OutboxRow.Progress(
                        OutboxRow.State.WAITING,
                        1,
                        Optional.of(FIVE.plus(HOLD)),
                        Optional.empty(),
                        ""));
    }

    @Test
    void oneEventReachesARecipientOnce() {
        assertThat(put(letter("brief/2026-07-15", "yard@farm.example", FIVE))).isTrue();
        assertThat(put(letter("brief/2026-07-15", "yard@farm.example", FIVE))).isFalse();
        assertThat(put(letter("brief/2026-07-15", "barn@farm.example", FIVE))).isTrue();

        assertThat(store.<List<OutboxRow>>read(books -> books.outbox().in(OutboxRow.State.WAITING)))
                .hasSize(2);
    }

    @Test
    void messageOfWorkThatFailedWasNeverPutIn() {
        try {
            store.inTransaction(books -> {
                books.outbox().put(letter("brief/2026-07-15", "yard@farm.example", FIVE));
                throw new IllegalStateException("the power goes");
            });
        } catch (IllegalStateException expected) {
            assertThat(claimed(FIVE)).isEmpty();
        }
    }

    @Test
    void claimedMessageIsHeldAndComesBackIfNobodySaysWhatBecameOfIt() {
        put(letter("brief/2026-07-15", "yard@farm.example", FIVE));

        assertThat(claimed(FIVE)).contains("brief/2026-07-15");
        assertThat(claimed(FIVE.plus(HOLD).minusMillis(1))).isEmpty();
        assertThat(claimed(FIVE.plus(HOLD))).contains("brief/2026-07-15");
    }

    @Test
    void nothingGoesOutBeforeItsSendWindow() {
        put(letter("window/a/opened", "yard@farm.example", FIVE.plus(Duration.ofHours(1))));

        assertThat(claimed(FIVE)).isEmpty();
        assertThat(claimed(FIVE.plus(Duration.ofHours(1)))).contains("window/a/opened");
    }

    @Test
    void laterMessageWaitsForAnEarlierOneToTheSameRecipient() {
        put(letter("window/a/opened", "yard@farm.example", FIVE));
        put(letter("window/a/closed", "yard@farm.example", FIVE));
        put(letter("window/a/opened", "barn@farm.example", FIVE));
        long first = store.outbox().claim(FIVE, HOLD).orElseThrow().id();
        store.outbox().markFailed(first, FailedTry.again(FIVE, "451 later", FIVE.plusSeconds(90)));

        assertThat(store.outbox()
                        .claim(FIVE, HOLD)
                        .orElseThrow()
                        .message()
                        .key()
                        .recipient())
                .isEqualTo("barn@farm.example");
        assertThat(claimed(FIVE)).isEmpty();
        assertThat(claimed(FIVE.plusSeconds(90))).contains("window/a/opened");
        store.outbox().markSent(first, FIVE.plusSeconds(91), "250 taken");
        assertThat(claimed(FIVE.plusSeconds(92))).contains("window/a/closed");
    }

    @Test
    void whatMayGoOutNowPassesWhatIsHeldForLater() {
        Instant morning = FIVE.plus(Duration.ofHours(6));
        put(letter("brief/2026-07-15", "yard@farm.example", morning));
        put(letter("window/a/1", "yard@farm.example", FIVE));

        assertThat(claimed(FIVE)).contains("window/a/1");
        assertThat(claimed(FIVE)).isEmpty();
        store.outbox().markSent(2, FIVE, "250 taken");
        assertThat(claimed(morning)).contains("brief/2026-07-15");
    }

    @Test
    void whatWasTriedIsNotPassedHoweverLongItWaits() {
        put(letter("window/a/1", "yard@farm.example", FIVE));
        long first = store.outbox().claim(FIVE, HOLD).orElseThrow().id();
        store.outbox().markFailed(first, FailedTry.again(FIVE, "451", FIVE.plusSeconds(600)));
        put(letter("window/b/1", "yard@farm.example", FIVE));

        assertThat(claimed(FIVE.plusSeconds(1))).isEmpty();
    }

    @Test
    void hastenedMessageGoesOutNowAndNoOtherDoes() {
        Instant morning = FIVE.plus(Duration.ofHours(6));
        put(letter("window/a/1", "yard@farm.example", morning));
        put(letter("window/a/1", "barn@farm.example", morning));
        put(letter("window/b/1", "yard@farm.example", morning));

        int hastened = store.inTransaction(books -> books.outbox()
                .hasten(List.of("window/a/1", "window/a/2"), "yard@farm.example", FIVE));

        assertThat(hastened).isEqualTo(1);
        assertThat(claimed(FIVE)).contains("window/a/1");
        assertThat(claimed(FIVE)).isEmpty();
    }

    @Test
    void eventsOfAThreadAreCountedOnceAndApartFromThoseOfAnother() {
        put(letter("alert/a/1", "yard@farm.example", FIVE));
        put(letter("alert/a/1", "barn@farm.example", FIVE));
        put(letter("alert/a/2", "yard@farm.example", FIVE));
        put(letter("alert/ab/1", "yard@farm.example", FIVE));

        int told = store.read(books -> books.outbox().eventsOf("alert/a"));

        assertThat(told).isEqualTo(2);
    }

    @Test
    void sentMessageStaysSentWhateverIsSaidLater() {
        put(letter("brief/2026-07-15", "yard@farm.example", FIVE));
        long id = store.outbox().claim(FIVE, HOLD).orElseThrow().id();
        store.outbox().markSent(id, FIVE.plusSeconds(2), "250 taken");

        store.outbox().markFailed(id, FailedTry.refused(FIVE.plusSeconds(3), "550 no"));
        store.outbox()
                .markFailed(id, FailedTry.again(FIVE.plusSeconds(3), "451", FIVE.plusSeconds(4)));
        assertThat(retry(id)).isFalse();

        assertThat(only().progress())
                .isEqualTo(new OutboxRow.Progress(
                        OutboxRow.State.SENT,
                        1,
                        Optional.empty(),
                        Optional.of(FIVE.plusSeconds(2)),
                        "250 taken"));
        assertThat(claimed(FIVE.plus(Duration.ofDays(2)))).isEmpty();
    }

    @Test
    void refusedMessageIsLeftAloneUntilAPersonRetriesIt() {
        put(letter("brief/2026-07-15", "yard@farm.example", FIVE));
        long id = store.outbox().claim(FIVE, HOLD).orElseThrow().id();
        store.outbox().markFailed(id, FailedTry.refused(FIVE, "550 no such mailbox"));
        assertThat(only().progress().state()).isEqualTo(OutboxRow.State.REFUSED);
        assertThat(only().progress().lastWords()).isEqualTo("550 no such mailbox");
        assertThat(claimed(FIVE.plus(Duration.ofDays(1)))).isEmpty();

        assertThat(retry(id)).isTrue();
        assertThat(claimed(FIVE)).contains("brief/2026-07-15");
    }

    @Test
    void droppedMessageNeverGoesOut() {
        put(letter("brief/2026-07-15", "yard@farm.example", FIVE));
        store.inTransaction(books -> books.outbox().drop(only().id(), FIVE));

        assertThat(only().progress().state()).isEqualTo(OutboxRow.State.DROPPED);
        assertThat(claimed(FIVE.plus(HOLD))).isEmpty();
    }

    private boolean retry(long id) {
        return store.inTransaction(
                books -> books.outbox().retry(id, FIVE, FIVE.plus(Duration.ofHours(24))));
    }

    @Test
    void twoPostmenNeverTakeTheSameMessage() throws Exception {
        for (int i = 0; i < 40; i++) {
            put(letter("brief/" + i, "person" + i + "@farm.example", FIVE));
        }
        ExecutorService postmen = Executors.newFixedThreadPool(3);
        try (Store other = engine.open(home)) {
            List<Future<List<String>>> rounds =
                    postmen.invokeAll(List.of(emptying(store), emptying(other), emptying(store)));
            List<String> taken = new ArrayList<>();
            for (Future<List<String>> round : rounds) {
                taken.addAll(round.get());
            }
            assertThat(taken).hasSize(40).doesNotHaveDuplicates();
        } finally {
            postmen.shutdownNow();
        }
    }

    private static Callable<List<String>> emptying(Store store) {
        return () -> {
            List<String> taken = new ArrayList<>();
            Optional<OutboxRow> row = store.outbox().claim(FIVE, HOLD);
            while (row.isPresent()) {
                taken.add(row.get().message().key().event());
                row = store.outbox().claim(FIVE, HOLD);
            }
            return taken;
        };
    }
}
