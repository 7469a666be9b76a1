package rainward.store.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.groups.Tuple.tuple;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.StageRecord;
import rainward.store.EachEngine;
import rainward.store.Store;
import rainward.store.TestEngine;

/** What a person says about stages, and what the journal makes of it. */
@EachEngine
class StageJournalIT {

    @Parameter
    TestEngine engine = TestEngine.SQLITE;

    @TempDir
    Path home;

    private Store store;

    @BeforeEach
    void open() {
        store = engine.open(home);
        store.inTransaction(books -> books.fields().take(Hollows.SURVEY, Hollows.JULY));
    }

    @AfterEach
    void close() {
        store.close();
    }

    private Verdict started(StageWord word) {
        return store.inTransaction(
                books -> books.journal().started(word, Hollows.NORTH, Hollows.RECIPE));
    }

    private Verdict done(StageWord word) {
        return store.inTransaction(
                books -> books.journal().done(word, Hollows.NORTH, Hollows.RECIPE));
    }

    private Verdict undo(String stage) {
        return store.inTransaction(books ->
                books.journal().undo(Hollows.word(stage, "20:00"), Hollows.NORTH, Hollows.RECIPE));
    }

    private FieldStatus status() {
        return store.read(books -> books.journal().statusOf("North Hollow"));
    }

    private List<JournalEntry> lines() {
        return store.read(books -> books.journal().of("North Hollow"));
    }

    private void say(JournalEntry.Kind kind) {
        store.inTransaction(books -> books.journal()
                .say(
                        "North Hollow",
                        kind,
                        new JournalEntry.Said(Hollows.JULY, Hollows.JULY, "foreman")));
    }

    @Nested
    class Progress {

        @Test
        void untouchedFieldIsPending() {
            assertThat(status()).isEqualTo(FieldStatus.UNTOUCHED);
        }

        @Test
        void stageIsStartedThenDone() {
            started(Hollows.word("mow", "08:00"));
            Verdict verdict = done(Hollows.word("mow", "09:30"));

            assertThat(verdict.words()).isEqualTo("North Hollow: mow done at Tue 9:30 am.");
            assertThat(status().state()).isEqualTo(FieldState.IN_WORK);
            assertThat(status().stages())
                    .containsExactly(new StageRecord(
                            "mow",
                            Optional.of(Instant.parse("2026-07-14T12:00:00Z")),
                            Optional.of(Instant.parse("2026-07-14T13:30:00Z")),
                            Optional.empty()));
        }

        @Test
        void seedInTheGroundMakesItSeededWithTheMixWantedThere() {
            done(Hollows.word("mow", "08:00"));
            done(Hollows.word("disk", "10:00"));
            done(Hollows.word("seed", "12:00"));
            done(Hollows.word("firm", "13:00"));

            assertThat(status().state()).isEqualTo(FieldState.SEEDED);
            assertThat(status().sownMix()).contains("clover and chicory");
            assertThat(status().stages()).hasSize(4);
        }

        @Test
        void toldTwiceStandsOnce() {
            done(Hollows.word("mow", "08:00"));
            Verdict again = done(Hollows.word("mow", "08:30"));

            assertThat(again)
                    .isEqualTo(new Verdict.AlreadySo("North Hollow: mow is already recorded as done"
                            + " at Tue 8:00 am; undo it first to record another time."));
            assertThat(started(Hollows.word("mow", "08:30")))
                    .isEqualTo(new Verdict.AlreadySo("North Hollow: mow is already done."));
            assertThat(lines()).hasSize(1);
        }

        @Test
        void failedStandOpensANewRound() {
            done(Hollows.word("mow", "08:00"));
            done(Hollows.word("disk", "09:00"));
            done(Hollows.word("seed", "10:00"));
            say(JournalEntry.Kind.STAND_FAILED);

            assertThat(status().state()).isEqualTo(FieldState.FAILED);
            assertThat(status().stages()).isEmpty();
            assertThat(status().sownMix()).isEmpty();
            assertThat(done(Hollows.word("mow", "12:00"))).isInstanceOf(Verdict.Written.class);
            assertThat(status().state()).isEqualTo(FieldState.IN_WORK);
        }

        @Test
        void holdPinAndDropAreSeenAndTakenBack() {
            Instant until = Hollows.JULY.plus(Duration.ofDays(2));
            JournalEntry.Said said = new JournalEntry.Said(Hollows.JULY, Hollows.JULY, "foreman");
            store.inTransaction(books -> books.journal().hold("North Hollow", until, said));
            say(JournalEntry.Kind.PINNED);
            say(JournalEntry.Kind.DROPPED);
            assertThat(status())
                    .isEqualTo(new FieldStatus(
                            FieldState.DROPPED,
                            List.of(),
                            Optional.empty(),
                            Optional.of(until),
                            true));

            say(JournalEntry.Kind.FREED);
            say(JournalEntry.Kind.UNPINNED);
            say(JournalEntry.Kind.TAKEN_BACK);
            assertThat(status()).isEqualTo(FieldStatus.UNTOUCHED);
        }
    }

    @Nested
    class Refusals {

        @Test
        void stageBeforeAnEarlierOneIsRefused() {
            Verdict verdict = done(Hollows.word("seed", "12:00"));

            assertThat(verdict)
                    .isEqualTo(
                            new Verdict.Refused("North Hollow: seed comes after mow and disk, not"
                                    + " done yet; record them first, or name what is left out on purpose:"
                                    + " --without \"mow\" --without \"disk\"."));
            assertThat(lines()).isEmpty();
        }

        @Test
        void earlierStagesLeftOutOnPurposeAreNamed() {
            Verdict verdict = done(Hollows.word("seed", "12:00", "mow", "disk"));

            assertThat(verdict).isInstanceOf(Verdict.Written.class);
            assertThat(lines())
                    .extracting(
                            JournalEntry::kind, line -> line.detail().stage().orElse("?"))
                    .containsExactly(
                            tuple(JournalEntry.Kind.PASSED_OVER, "mow"),
                            tuple(JournalEntry.Kind.PASSED_OVER, "disk"),
                            tuple(JournalEntry.Kind.DONE, "seed"));
            assertThat(status().state()).isEqualTo(FieldState.SEEDED);
        }

        @Test
        void timeBeforeAnEarlierStageIsRefused() {
            done(Hollows.word("mow", "10:00"));

            assertThat(done(Hollows.word("disk", "09:00")).words())
                    .isEqualTo("North Hollow: disk at Tue 9:00 am would come before mow, done"
                            + " at Tue 10:00 am; give a later time, or undo mow first.");
        }

        @Test
        void endBeforeItsStartIsRefused() {
            started(Hollows.word("mow", "10:00"));

            assertThat(done(Hollows.word("mow", "09:00")).words())
                    .isEqualTo("North Hollow: mow cannot end at Tue 9:00 am, it was started at"
                            + " Tue 10:00 am; give a later time, or undo the start first.");
        }

        @Test
        void unknownStageNamesTheNearest() {
            assertThat(done(Hollows.word("sead", "09:00")).words())
                    .isEqualTo("North Hollow: its recipe \"mow, disk, seed, firm\" has no stage"
                            + " \"sead\"; \"seed\" is the nearest of mow, disk, seed, firm.");
        }

        @Test
        void timeStillToComeIsRefused() {
            StageWord word = Hollows.word("mow", "12:00");
            StageWord early = new StageWord(
                    word.field(),
                    word.stage(),
                    new StageWord.Said(
                            word.said().at(),
                            word.said().at().minusSeconds(7200),
                            "foreman",
                            word.said().clock()),
                    word.means());

            assertThat(done(early).words())
                    .isEqualTo("North Hollow: mow cannot have happened at Tue noon, which is"
                            + " still to come.");
        }
    }

    @Nested
    class Undoing {

        @Test
        void doneIsTakenBackFirstThenTheStart() {
            started(Hollows.word("mow", "08:00"));
            done(Hollows.word("mow", "09:00"));

            assertThat(undo("mow").words())
                    .isEqualTo("North Hollow: mow is no longer recorded as done.");
            assertThat(status().of("mow").orElseThrow().done()).isFalse();
            assertThat(undo("mow").words())
                    .isEqualTo("North Hollow: mow is no longer recorded as started.");
            assertThat(status()).isEqualTo(FieldStatus.UNTOUCHED);
            assertThat(undo("mow"))
                    .isEqualTo(
                            new Verdict.AlreadySo("North Hollow: nothing is recorded about mow, so"
                                    + " there is nothing to undo."));
        }

        @Test
        void everyLineStaysInTheJournal() {
            done(Hollows.word("mow", "08:00"));
            undo("mow");
            done(Hollows.word("mow", "08:15"));

            assertThat(lines())
                    .extracting(JournalEntry::kind)
                    .containsExactly(
                            JournalEntry.Kind.DONE,
                            JournalEntry.Kind.UNDONE,
                            JournalEntry.Kind.DONE);
        }

        @Test
        void stageUnderALaterOneIsNotUndone() {
            done(Hollows.word("mow", "08:00"));
            done(Hollows.word("disk", "09:00"));

            assertThat(undo("mow"))
                    .isEqualTo(new Verdict.Refused("North Hollow: mow cannot be undone while disk,"
                            + " which came after it, stands; undo the last one first."));
        }

        @ParameterizedTest
        @ValueSource(strings = {"update journal set at = 0", "delete from journal"})
        void databaseItselfRefusesToRewrite(String sql) throws SQLException {
            done(Hollows.word("mow", "08:00"));

            try (Connection connection = engine.connect(home);
                    Statement statement = connection.createStatement()) {
                assertThatThrownBy(() -> statement.execute(sql))
                        .isInstanceOf(SQLException.class)
                        .hasMessageContaining("the journal is never");
            }
        }
    }

    /** Whatever a person says in whatever order. */
    @Nested
    class Laws {

        private static final List<String> STAGES = List.of("mow", "disk", "seed", "firm");

        @Test
        void journalOnlyGrowsAndStagesStayInOrder() {
            SplittableRandom mood = new SplittableRandom(20260714);
            int before = 0;
            for (int i = 0; i < 200; i++) {
                String stage = STAGES.get(mood.nextInt(4));
                String time = String.format("%02d:%02d", 6 + i / 30, 2 * (i % 30));
                Verdict verdict = switch (mood.nextInt(3)) {
                    case 0 -> started(Hollows.word(stage, time));
                    case 1 -> done(Hollows.word(stage, time));
                    default -> undo(stage);
                };
                int now = lines().size();
                assertThat(now - before)
                        .isEqualTo(
                                verdict instanceof Verdict.Written w
                                        ? w.entries().size()
                                        : 0);
                before = now;
                assertThat(status().stages())
                        .extracting(StageRecord::stage)
                        .isEqualTo(STAGES.subList(0, status().stages().size()));
            }
        }
    }
}
