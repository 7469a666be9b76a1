package rainward.store.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.farm.FieldState;
import rainward.input.check.StandVerdict;
import rainward.store.EachEngine;
import rainward.store.Store;
import rainward.store.TestEngine;
import rainward.store.journal.StandBook.Finding;
import rainward.store.journal.StandBook.StandCheck;

@EachEngine
class StandBookIT {

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

    private static StandCheck check(StandVerdict result) {
        return new StandCheck(
                "North Hollow",
                result,
                Optional.of("clover and chicory"),
                new Finding(
                        OptionalDouble.of(0.21),
                        OptionalDouble.of(0.7),
                        result == StandVerdict.UP
                                ? Optional.empty()
                                : Optional.of(StandVerdict.Cause.WASHED),
                        Optional.of("gullies at the east end")),
                new JournalEntry.Said(Hollows.JULY, Hollows.JULY.plusSeconds(60), "foreman"));
    }

    private List<StandCheck> known() {
        return store.read(books -> books.stands().since(Hollows.JULY));
    }

    @ParameterizedTest
    @CsvSource({"UP, UP", "THIN, FAILED", "FAILED, FAILED"})
    void lookAtAFieldSettlesWhereItStands(StandVerdict result, FieldState state) {
        store.inTransaction(books -> books.stands().add(check(result)));

        assertThat(known()).containsExactly(check(result));
        assertThat(store.read(books -> books.journal().statusOf("North Hollow")).state())
                .isEqualTo(state);
    }

    @Test
    void checkThatWasUndoneCountsNoMore() {
        long line = store.inTransaction(books -> books.stands().add(check(StandVerdict.FAILED)));
        Verdict first = store.inTransaction(books ->
                books.journal().undoLine(line, check(StandVerdict.FAILED).said()));
        Verdict again = store.inTransaction(books ->
                books.journal().undoLine(line, check(StandVerdict.FAILED).said()));

        assertThat(first).isInstanceOf(Verdict.Written.class);
        assertThat(again)
                .isEqualTo(new Verdict.AlreadySo("line " + line + " does not count already."));
        assertThat(known()).isEmpty();
        assertThat(store.read(books -> books.journal().statusOf("North Hollow")).state())
                .isEqualTo(FieldState.PENDING);
    }

    @Test
    void lineThatIsNotThereCannotBeUndone() {
        assertThat(store.<Verdict>inTransaction(books ->
                        books.journal().undoLine(99, check(StandVerdict.UP).said())))
                .isEqualTo(new Verdict.Refused("there is no line 99 in the journal."));
    }
}
