package rainward.store.ground;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.FieldState;
import rainward.farm.GeoPoint;
import rainward.farm.MappedField;
import rainward.farm.Property;
import rainward.farm.Survey;
import rainward.store.Books;
import rainward.store.EachEngine;
import rainward.store.Store;
import rainward.store.TestEngine;
import rainward.store.journal.Hollows;

@EachEngine
class FieldBookIT {

    @Parameter
    TestEngine engine = TestEngine.SQLITE;

    @TempDir
    Path home;

    private Store store;

    @BeforeEach
    void open() {
        store = engine.open(home);
        assertThat(take(Hollows.SURVEY)).isEqualTo(new FieldBook.Taken(2, 0));
    }

    @AfterEach
    void close() {
        store.close();
    }

    private FieldBook.Taken take(Survey survey) {
        return store.inTransaction(books -> books.fields().take(survey, Hollows.JULY));
    }

    @Test
    void fieldComesBackAsItWentIn() {
        assertThat(store.<Optional<Field>>read(books -> books.fields().named("North Hollow")))
                .contains(Hollows.NORTH);
    }

    @Test
    void importingAgainUpdatesByNameAndKeepsTheJournal() {
        store.inTransaction(books ->
                books.journal().done(Hollows.word("mow", "08:00"), Hollows.NORTH, Hollows.RECIPE));
        Field larger = Hollows.field("North Hollow", 4.5);

        FieldBook.Taken again = take(new Survey(
                List.of(), List.of(), List.of(new MappedField(larger, Optional.empty()))));

        assertThat(again).isEqualTo(new FieldBook.Taken(0, 1));
        assertThat(store.<List<FieldCase>>read(Books::cases))
                .extracting(c -> c.field().areaHa(), c -> c.status().state())
                .containsExactly(tuple(4.5, FieldState.IN_WORK), tuple(1.5, FieldState.PENDING));
    }

    @Test
    void boundaryStaysWhereALaterFileHasNone() {
        take(new Survey(
                List.of(), List.of(), List.of(new MappedField(Hollows.NORTH, Optional.empty()))));

        assertThat(store.<Optional<String>>read(books -> books.fields().boundaryOf("North Hollow")))
                .contains("{\"type\":\"Polygon\"}");
        assertThat(store.<Optional<String>>read(books -> books.fields().boundaryOf("South Hollow")))
                .isEmpty();
    }

    @Test
    void statedGateIsNotMovedByTheMiddleOfSomeFields() {
        Property middle = new Property("Kettle Hollow", new GeoPoint(42.5, -84.5));

        take(new Survey(List.of(), List.of(middle), List.of()));

        assertThat(store.<List<Property>>read(books -> books.fields().properties()))
                .containsExactly(Hollows.PROPERTY);
    }

    @Test
    void statedGateReplacesTheMiddleOfSomeFields() {
        Property middle = new Property("Marl Pit", new GeoPoint(42.5, -84.5));
        Property gate = new Property("Marl Pit", new GeoPoint(42.6, -84.6));
        take(new Survey(List.of(), List.of(middle), List.of()));

        take(new Survey(List.of(gate), List.of(), List.of()));

        assertThat(store.<List<Property>>read(books -> books.fields().properties()))
                .containsExactly(Hollows.PROPERTY, gate);
    }
}
