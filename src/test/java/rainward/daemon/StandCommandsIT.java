package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;

/** What came up, typed after a field was seeded. */
class StandCommandsIT {

    @TempDir
    Path home;

    private Desk desk = new Desk(Path.of(""), Instant.EPOCH);

    @BeforeEach
    void takeFieldsIn() {
        desk = new Desk(home, InventedWeather.MONDAY).withSettings(Desk.crew());
        assertThat(desk.type("import", "config/demo-fields.geojson").exitCode()).isZero();
    }

    private Desk weekAfterSeeding() {
        for (String stage : new String[] {"spread", "disk", "till", "seed"}) {
            Desk.Said said = desk.type("done", "MP1", stage);
            assertThat(said.exitCode()).as(said.err()).isZero();
        }
        return desk.at(InventedWeather.MONDAY.plus(Duration.ofDays(8)));
    }

    @Test
    void nothingCanComeUpWhereNothingIsSeeded() {
        Desk.Said said = desk.type("stand", "MP1", "up");

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("MP1 Orchard Strip is not recorded as seeded");
    }

    @Test
    void failedStandBringsTheFieldBackIntoTheOrder() {
        Desk later = weekAfterSeeding();

        JsonNode said = later.type(
                        "stand", "MP1", "failed", "--cause", "dry", "--counted", "10%", "--json")
                .json();

        assertThat(said.path("result").asText()).isEqualTo("failed");
        assertThat(said.path("chanceAtSeeding").isNull()).isTrue();
        assertThat(said.path("words").asText()).contains("back in the order");
        assertThat(later.type("pin", "MP1").exitCode()).isZero();
    }

    @Test
    void standThatIsUpStaysOutOfTheOrder() {
        Desk later = weekAfterSeeding();

        assertThat(later.type("stand", "MP1", "up").exitCode()).isZero();

        assertThat(later.type("pin", "MP1").err())
                .contains("MP1 Orchard Strip is up and not in the order");
    }

    @Test
    void seedIsLookedAtOnceRainHasDoneItsPart() {
        Desk later = weekAfterSeeding();

        JsonNode dry = later.type("stand", "--json").json().path("checks").path(0);
        assertThat(dry.path("field").asText()).isEqualTo("MP1 Orchard Strip");
        assertThat(dry.path("due").asBoolean()).isFalse();

        assertThat(later.type("rain", "Mill Pond", "1.2in", "--since", "2026-07-14 06:00")
                        .exitCode())
                .isZero();
        Desk muchLater = desk.at(InventedWeather.MONDAY.plus(Duration.ofDays(16)));
        JsonNode wet =
                muchLater.type("stand", "MP1", "--json").json().path("checks").path(0);
        assertThat(wet.path("seed").asText()).isEqualTo("GROWING");
        assertThat(wet.path("look").asText()).isLessThan(dry.path("look").asText());
        assertThat(wet.path("due").asBoolean()).isTrue();
        assertThat(muchLater.type("brief").out())
                .contains("MP1 Orchard Strip: turnip and rape, seeded Mon, Jul 13; a stand can be");
    }

    @Test
    void leavingAThinStandIsOneOfTheChoices() {
        JsonNode thin = weekAfterSeeding()
                .type(
                        "count",
                        "MP1",
                        "--ring",
                        "28.26in",
                        "--plants",
                        "9,7,8,10,8",
                        "--write",
                        "--cause",
                        "eaten",
                        "--json")
                .json();

        assertThat(thin.path("verdict").asText()).isEqualTo("thin");
        assertThat(thin.path("next").findValuesAsText("mix")).contains("keep what stands");
        assertThat(thin.path("words").asText()).contains("keep what stands: worth ");
    }

    private static Desk.Said countedUp(Desk desk, String... more) {
        return desk.type(Stream.concat(
                        Stream.of(
                                "count", "MP1", "--ring", "28.26in", "--plants", "60,70,80,65,75"),
                        Stream.of(more))
                .toArray(String[]::new));
    }

    @Test
    void causeThatWouldBeDroppedIsRefusedAndNothingIsWritten() {
        Desk later = weekAfterSeeding();

        assertThat(countedUp(later, "--write", "--cause", "dry").err())
                .contains("A stand that is up has no cause");
        assertThat(countedUp(later, "--cause", "dry").err())
                .contains("--cause is kept with the look: give --write too");
        assertThat(later.type("stand").out()).contains("MP1 Orchard Strip");
        assertThat(countedUp(later, "--write").exitCode()).isZero();
        assertThat(later.type("stand").out()).contains("No seeded field waits for a look.");
    }

    private static double standOf(Desk desk, String... species) {
        return desk.type(Stream.concat(
                                Stream.of("count", "MP1", "--ring", "28.26in", "--json"),
                                Stream.of(species).flatMap(one -> Stream.of("--of", one)))
                        .toArray(String[]::new))
                .json()
                .path("standShare")
                .asDouble();
    }

    @Test
    void seedlingsToldApartCountByTheWeightOfTheirSpecies() {
        Desk later = weekAfterSeeding();

        double turnip = standOf(later, "turnip=9,7,8,10,8");
        double rape = standOf(later, "rape=4,0,3,2,1");
        assertThat(turnip).isPositive();
        assertThat(standOf(later, "turnip=18,14,16,20,16"))
                .isCloseTo(2 * turnip, Offset.offset(1e-9));
        assertThat(standOf(later, "turnip=9,7,8,10,8", "rape=4,0,3,2,1"))
                .isCloseTo(turnip + rape, Offset.offset(1e-9));
        assertThat(later.type("count", "MP1", "--ring", "28in", "--of", "kale=1,2")
                        .err())
                .contains("There is no species of turnip and rape 'kale'");
        assertThat(later.type(
                                "count",
                                "MP1",
                                "--ring",
                                "28in",
                                "--of",
                                "turnip=1,2",
                                "--of",
                                "rape=1")
                        .err())
                .contains("a number for every place");
        assertThat(later.type("count", "MP1", "--ring", "28in", "--plants", "1,two")
                        .err())
                .contains("'1,two' is no count of plants by place");
        assertThat(later.type("count", "MP1", "--ring", "28in").err())
                .contains("Say what was counted");
    }

    @Test
    void fieldWithoutSeedHasNoDayToLook() {
        assertThat(desk.type("stand", "MP1").err())
                .contains("MP1 Orchard Strip has no seed in the ground");
        assertThat(desk.type("stand").out()).contains("No seeded field waits for a look.");
    }

    @Test
    void wordsThatAreNoneAreRefusedWithThoseThatAre() {
        Desk later = weekAfterSeeding();

        assertThat(later.type("stand", "MP1", "splendid").err())
                .contains("'splendid' is no result: write one of up, thin, failed");
        assertThat(later.type("stand", "MP1", "thin", "--cause", "bad luck").err())
                .contains("'bad luck' is no cause: write one of dry, washed");
        assertThat(later.type("stand", "MP1", "up", "--cause", "dry").err())
                .contains("has no cause");
        assertThat(later.type("stand", "MP1", "up", "--counted", "120%").exitCode())
                .isEqualTo(2);
        assertThat(later.type("stand", "MP1", "up", "--at", "2026-07-01 09:00").err())
                .contains("after the seeding");
    }

    @Test
    void noteIsKeptAndChangesNothingElse() {
        Desk later = weekAfterSeeding();

        assertThat(later.type("note", "MP1", "gate chain is cut").out())
                .contains("Noted for MP1 Orchard Strip.");

        assertThat(later.type("note", "MP1", "  ").exitCode()).isEqualTo(2);
        assertThat(later.type("stand", "MP1", "up").exitCode()).isZero();
    }
}
