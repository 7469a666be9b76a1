package rainward.store.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import rainward.farm.FieldState;
import rainward.input.PlantBack;
import rainward.input.SoilTest;
import rainward.input.record.Applied;
import rainward.input.record.BoxLook;
import rainward.input.record.Harvested;
import rainward.input.record.Note;
import rainward.input.record.TagRead;
import rainward.input.seed.SeedTag;
import rainward.input.seeder.BoxCheck;
import rainward.input.seeder.SeedSize;
import rainward.input.seeder.SettingRecord;
import rainward.input.stock.StockEntry;
import rainward.store.EachEngine;
import rainward.store.Store;
import rainward.store.TestEngine;
import rainward.store.journal.Hollows;
import rainward.store.journal.JournalEntry;
import rainward.store.journal.StageWord;
import rainward.store.journal.Verdict;

/** What was written about inputs is read as it was said, whatever happens to the field's name. */
@EachEngine
class LedgerIT {

    private static final JournalEntry.Said SAID =
            new JournalEntry.Said(Hollows.JULY, Hollows.JULY, "Marnie");
    private static final String NORTH = Hollows.NORTH.name();
    private static final LocalDate SPRING = LocalDate.of(2026, 4, 2);

    private static final SoilTest TEST = new SoilTest(
            NORTH,
            SPRING,
            new SoilTest.Acidity(5.6, Optional.of(new SoilTest.Buffer("SMP", 6.6))),
            new SoilTest.Nutrients(
                    Optional.of(new SoilTest.Extract("Bray P1", 18)),
                    Optional.empty(),
                    OptionalDouble.of(7.5)));

    private static final Applied LIMED = new Applied(
            "disk", 4.25, List.of(new Applied.Used("ag lime", 8_000)), Optional.of("spreader"));

    @Parameter
    TestEngine engine = TestEngine.SQLITE;

    @TempDir
    Path home;

    private Store store;

    @BeforeEach
    void open() {
        store = engine.open(home);
        takeIn();
    }

    @AfterEach
    void close() {
        store.close();
    }

    private void takeIn() {
        store.inTransaction(books -> books.fields().take(Hollows.SURVEY, Hollows.JULY));
    }

    private <T> List<LedgerLine<T>> lines(Class<T> type) {
        return store.read(books -> books.ledger().all(type));
    }

    private <T> List<T> all(Class<T> type) {
        return lines(type).stream().map(LedgerLine::entry).toList();
    }

    private FieldState state(String field) {
        return store.read(books -> books.journal().statusOf(field).state());
    }

    @Test
    void everyKindIsReadAsItWasSaid() {
        SeedSize size = new SeedSize("turnip and rape", 346_000);
        List<Object> said = List.of(
                TEST,
                new TagRead("turnip", SeedTag.bare("L7", 0.99, 0.88), SPRING),
                new StockEntry("turnip", Hollows.JULY, StockEntry.Kind.COUNTED, 68),
                LIMED,
                new SettingRecord("roller seeder", size, Hollows.JULY, 18, 5.2),
                new BoxLook(
                        "roller seeder",
                        "turnip and rape",
                        new BoxCheck(new BoxCheck.Target(5, 18, 2, 10), 40, 3, 22, 0.5)),
                new PlantBack("a spray", "turnip", SPRING, OptionalInt.empty()),
                new Harvested("corn grain", SPRING, 9_000),
                new Note("deer in the east corner"));

        store.inTransaction(books -> {
            said.forEach(entry -> books.ledger().add(NORTH, entry, SAID));
            return said.size();
        });

        for (Object entry : said) {
            assertThat(all(entry.getClass())).isEqualTo(List.of(entry));
        }
    }

    @Test
    void lineTakenBackStaysOnDiskAndDoesNotCount() throws SQLException {
        long id = store.inTransaction(books -> books.ledger().add(NORTH, TEST, SAID));

        assertThat(store.<Boolean>inTransaction(books -> books.ledger().undo(id, SAID)))
                .isTrue();
        assertThat(store.<Boolean>inTransaction(books -> books.ledger().undo(id, SAID)))
                .isFalse();

        assertThat(all(SoilTest.class)).isEmpty();
        assertThat(linesOnDisk()).as("the line and the word that took it back").isEqualTo(2);
    }

    private int linesOnDisk() throws SQLException {
        try (Connection file = engine.connect(home);
                ResultSet count =
                        file.createStatement().executeQuery("select count(*) from ledger")) {
            count.next();
            return count.getInt(1);
        }
    }

    @Test
    void whatCameWithWorkGoesWithIt() {
        StageWord word = Hollows.word("mow", "06:00");
        store.inTransaction(books -> {
            Verdict.Written done =
                    (Verdict.Written) books.journal().done(word, Hollows.NORTH, Hollows.RECIPE);
            return books.ledger().addWith(done.entries().get(0), NORTH, LIMED, SAID);
        });
        assertThat(all(Applied.class)).containsExactly(LIMED);

        store.inTransaction(books -> books.journal().undo(word, Hollows.NORTH, Hollows.RECIPE));

        assertThat(all(Applied.class)).isEmpty();
    }

    @Test
    void databaseItselfRefusesToRewriteOrShorten() throws SQLException {
        store.inTransaction(books -> books.ledger().add(NORTH, TEST, SAID));
        try (Connection raw = engine.connect(home);
                Statement statement = raw.createStatement()) {
            assertThatThrownBy(() -> statement.execute("update ledger set said_by = 'x'"))
                    .hasMessageContaining("never rewritten");
            assertThatThrownBy(() -> statement.execute("delete from ledger"))
                    .hasMessageContaining("never shortened");
        }
    }

    @Test
    void importingAgainTouchesNothingThatWasWritten() {
        store.inTransaction(books -> {
            books.ledger().add(NORTH, TEST, SAID);
            return books.journal().say(NORTH, JournalEntry.Kind.DROPPED, SAID);
        });

        takeIn();

        assertThat(all(SoilTest.class)).containsExactly(TEST);
        assertThat(state(NORTH)).isEqualTo(FieldState.DROPPED);
    }

    @Test
    void renamedFieldKeepsItsWholeHistoryAndItsPlaceInTheList() {
        store.inTransaction(books -> {
            books.ledger().add(NORTH, TEST, SAID);
            return books.journal().say(NORTH, JournalEntry.Kind.DROPPED, SAID);
        });

        rename(NORTH, "Kettle Top");

        assertThat(names()).containsExactly("Kettle Top", Hollows.SOUTH.name());
        assertThat(lines(SoilTest.class))
                .singleElement()
                .satisfies(line -> assertThat(line.field()).contains("Kettle Top"));
        assertThat(state("Kettle Top")).isEqualTo(FieldState.DROPPED);
    }

    @Test
    void fileWithTheOldNameUpdatesTheFieldUnderItsNewOne() {
        rename(NORTH, "Kettle Top");

        takeIn();

        assertThat(names()).containsExactly("Kettle Top", Hollows.SOUTH.name());
    }

    @Test
    void nameComesBackAfterTwoRenamesWithAllThatWasSaidUnderEither() {
        store.inTransaction(books -> books.ledger().add(NORTH, new Note("first"), SAID));
        rename(NORTH, "Kettle Top");
        store.inTransaction(books -> books.ledger().add("Kettle Top", new Note("second"), SAID));
        rename("Kettle Top", "Upper Kettle");
        rename("Upper Kettle", NORTH);

        assertThat(names()).containsExactly(NORTH, Hollows.SOUTH.name());
        assertThat(lines(Note.class))
                .extracting(LedgerLine::field)
                .containsOnly(Optional.of(NORTH));
        assertThat(all(Note.class)).extracting(Note::words).containsExactly("first", "second");
    }

    @Test
    void nameOfAnotherFieldIsNotTaken() {
        assertThat(store.<Boolean>inTransaction(
                        books -> books.fields().rename(NORTH, Hollows.SOUTH.name())))
                .isFalse();
        assertThat(names()).contains(NORTH);
    }

    @Test
    void fieldThatNothingIsRecordedOfIsTakenOutAndAnyOtherStays() {
        store.inTransaction(books -> books.ledger().add(NORTH, TEST, SAID));

        assertThat(remove(NORTH)).isFalse();
        assertThat(remove(Hollows.SOUTH.name())).isTrue();

        assertThat(names()).containsExactly(NORTH);
        takeIn();
        assertThat(names()).as("it may come again").contains(Hollows.SOUTH.name());
        rename(Hollows.SOUTH.name(), "Low End");
        assertThat(remove("Low End")).as("the other name is a record").isFalse();
    }

    private boolean remove(String field) {
        return store.inTransaction(books -> books.fields().remove(field));
    }

    private void rename(String was, String now) {
        assertThat(store.<Boolean>inTransaction(books -> books.fields().rename(was, now)))
                .isTrue();
    }

    private List<String> names() {
        return store.read(books ->
                books.fields().all().stream().map(field -> field.name()).toList());
    }
}
