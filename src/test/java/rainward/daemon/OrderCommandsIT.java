package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;

/** Order, pin, hold, drop and free, typed on the demo's Monday morning. */
class OrderCommandsIT {

    @TempDir
    Path home;

    private final InventedWeather weather = new InventedWeather();
    private Desk desk = new Desk(Path.of(""), Instant.EPOCH);

    @BeforeEach
    void takeFieldsIn() {
        desk = new Desk(home, InventedWeather.MONDAY).withWeatherFrom(weather.address(), """

                [order]
                thinking = "1 s"
                """);
        assertThat(desk.type("import", "config/demo-fields.geojson").exitCode()).isZero();
    }

    @AfterEach
    void stop() {
        weather.close();
    }

    private void pull() {
        Desk.Said said = desk.type("pull");
        assertThat(said.exitCode()).as(said.out() + said.err()).isZero();
    }

    private String rank(int rank) {
        for (JsonNode item : desk.type("order", "--json").json().path("items")) {
            if (item.path("rank").asInt() == rank) {
                return item.path("field").asText();
            }
        }
        throw new AssertionError("nothing has rank " + rank);
    }

    @Test
    void seedingTellsItsMixAndNoOtherStageDoes() {
        pull();
        int seedings = 0;
        for (JsonNode item : desk.type("order", "--json").json().path("items")) {
            boolean seeding = item.path("stage").asText().equals("seed");
            seedings += seeding ? 1 : 0;
            assertThat(item.path("mix").asText("").isEmpty() || item.path("mix").isNull())
                    .isEqualTo(!seeding);
        }
        assertThat(seedings).isPositive();
    }

    @Test
    void theReasonOfAFieldNamesWhatItLosesAndWhatHoldsEachStage() {
        pull();
        String first = "MP2 Long Pond";
        desk.type("pin", first);

        JsonNode why = desk.type("order", "--why", first, "--json").json();

        assertThat(why.path("field").asText()).isEqualTo(first);
        assertThat(why.path("rank").asInt()).isEqualTo(1);
        assertThat(why.path("items")).isNotEmpty();
        assertThat(why.path("items").get(0).path("words").asText()).isNotBlank();
        assertThat(desk.type("order", "--why", first).out()).contains("number 1 in the order");
    }

    @Test
    void whatIfHoldsTheFieldInTheQuestionOnly() {
        pull();
        String first = rank(1);

        JsonNode then =
                desk.type("order", "--what-if", "hold " + first, "--json").json();

        assertThat(then.path("thenHa").asDouble())
                .isLessThan(then.path("valueHa").asDouble());
        List<JsonNode> moved = new ArrayList<>();
        then.path("fields").forEach(moved::add);
        assertThat(moved)
                .filteredOn(field -> field.path("field").asText().equals(first))
                .singleElement()
                .satisfies(
                        field -> assertThat(field.path("thenSeedAt").isNull()).isTrue());
        assertThat(desk.type("ready", "--json").out()).contains(first);
    }

    @Test
    void whatIfThatCannotBeReadIsToldWhole() {
        pull();

        Desk.Said said = desk.type("order", "--what-if", "hold F99; dance");

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("F99").contains("dance").contains("say hold FIELD");
    }

    @Test
    void withoutAForecastThereIsNothingToExplain() {
        Desk.Said said = desk.type("order", "--why", "MP1");

        assertThat(said.exitCode()).isEqualTo(1);
        assertThat(said.err()).contains("no forecast yet").contains("rainward pull");
    }

    @Test
    void unknownFieldSuggestsTheNearestName() {
        Desk.Said said = desk.type("pin", "MP1 Orchid Strip");

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err())
                .contains("no field 'MP1 Orchid Strip'", "did you mean 'MP1 Orchard Strip'");
    }

    @Test
    void pinnedFieldComesFirstUntilItIsFreed() {
        pull();
        String chosen = "MP2 Long Pond";

        assertThat(desk.type("pin", chosen, "--json").json().path("outcome").asText())
                .isEqualTo("written");
        assertThat(desk.type("pin", chosen, "--json").json().path("outcome").asText())
                .isEqualTo("already so");
        assertThat(rank(1)).isEqualTo(chosen);

        assertThat(desk.type("free", chosen).out()).contains("is free");
        assertThat(desk.type("free", chosen).out()).contains("neither pinned, held nor dropped");
    }

    @Test
    void heldFieldIsLeftOutUntilItsDay() {
        pull();
        String first = rank(1);

        assertThat(desk.type("hold", first, "2026-08-20").out())
                .contains("left out until Thu, Aug 20 midnight");

        assertThat(desk.type("order", "--json").json().findValuesAsText("field"))
                .doesNotContain(first);
        assertThat(desk.type("order", "--why", first).out()).contains("not in the order");
    }

    @Test
    void holdThatIsOverAndWordsThatAreNoDayAreRefused() {
        Desk.Said past = desk.type("hold", "MP1", "2026-07-01");
        Desk.Said words = desk.type("hold", "MP1", "whenever");

        assertThat(past.exitCode()).isEqualTo(2);
        assertThat(past.err()).contains("over already");
        assertThat(words.exitCode()).isEqualTo(2);
        assertThat(words.err()).contains("'whenever' is no time");
    }

    @Test
    void droppedFieldCannotBePinnedBeforeItIsFreed() {
        assertThat(desk.type("drop", "MP1").exitCode()).isZero();
        assertThat(desk.type("drop", "MP1").out()).contains("dropped already");

        Desk.Said said = desk.type("pin", "MP1");
        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("MP1 Orchard Strip is dropped").contains("rainward free");

        assertThat(desk.type("free", "MP1").exitCode()).isZero();
        assertThat(desk.type("pin", "MP1").exitCode()).isZero();
    }
}
