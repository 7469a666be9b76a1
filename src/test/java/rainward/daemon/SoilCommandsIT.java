package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.brief.picture.FieldChart;
import rainward.daemon.demo.InventedWeather;

/** The word of somebody who dug, typed on the demo's Monday morning. */
class SoilCommandsIT {

    private static final String FIELD = "MP2 Long Pond";

    @TempDir
    Path home;

    private final InventedWeather weather = new InventedWeather();
    private Desk desk = new Desk(Path.of(""), Instant.EPOCH);

    @BeforeEach
    void pullTheWeather() {
        desk = new Desk(home, InventedWeather.MONDAY).withWeatherFrom(weather.address(), """

                [order]
                thinking = "1 s"
                """);
        assertThat(desk.type("import", "config/demo-fields.geojson").exitCode()).isZero();
        assertThat(desk.type("pull").exitCode()).isZero();
    }

    @AfterEach
    void stop() {
        weather.close();
    }

    private JsonNode sheets() {
        return desk.type("ready", "--json").json().path("fields");
    }

    private static JsonNode told(JsonNode sheets, String field) {
        for (JsonNode sheet : sheets) {
            if (sheet.path("field").asText().equals(field)) {
                return sheet;
            }
        }
        throw new AssertionError("no readiness of " + field);
    }

    /** In November no mix is in season, so that no day of emergence is known on any field. */
    @Test
    void outOfSeasonNothingEndlessIsShownAndNoReasonTwice() {
        Instant november = InventedWeather.MONDAY.plus(Duration.ofDays(120));
        Desk late = new Desk(home, november).withWeatherFrom(weather.address(), "");
        late.type("pull");

        String told = late.type("ready", "MP2").out();

        assertThat(told)
                .contains("No mix of this field may be sown now.")
                .doesNotContain("[no mix", "Infinity", "NaN", "∞");
        assertThat(late.type("ready", "--json").out())
                .contains("may be sown")
                .doesNotContain("Infinity", "NaN");
    }

    @Test
    void wordMovesTheReadinessOfItsFieldUntilItIsTakenBack() {
        JsonNode first = sheets();
        JsonNode before = told(first, FIELD);

        Desk.Said said = desk.type("soil", "MP2", "moist", "--by", "Marnie");

        assertThat(said.out()).contains("MP2 Long Pond: moist at seed depth, Mon 5:00 am.");
        JsonNode sheets = sheets();
        JsonNode told = told(sheets, FIELD);
        assertThat(told.path("parts").path("moisture").asInt())
                .isGreaterThan(before.path("parts").path("moisture").asInt() + 20);
        assertThat(told.path("readiness").asInt())
                .isGreaterThan(before.path("readiness").asInt());
        assertThat(told(sheets, "MP1 Orchard Strip")).isEqualTo(told(first, "MP1 Orchard Strip"));

        assertThat(desk.type("soil", "MP2", "--undo").out()).contains("does not count any more");
        assertThat(sheets()).isEqualTo(first);
        assertThat(desk.type("soil", "MP2", "--undo", "--json")
                        .json()
                        .path("outcome")
                        .asText())
                .isEqualTo("already so");
    }

    @Test
    void oneFieldIsShownWithItsNumbersAndAsAPicture() throws IOException {
        Path file = home.resolve("field.png");

        Desk.Said said = desk.type("ready", "MP2", "--picture", file.toString());

        assertThat(said.out())
                .contains("MP2 Long Pond", "useful rain", "would change it most")
                .doesNotContain("MP1");
        assertThat(ImageIO.read(file.toFile()).getWidth()).isEqualTo(2 * FieldChart.WIDTH);
        assertThat(desk.type("ready", "--picture", file.toString()).err())
                .contains("A picture shows one field");
        assertThat(desk.type("ready", "MP2", "--picture", "no/such/folder.png").err())
                .contains("cannot be written to no/such/folder.png");
    }

    @Test
    void wordThatTellsNothingIsRefusedWithWhatWould() {
        assertThat(desk.type("soil", "MP2", "soggy").err())
                .contains("'soggy' is no word for soil here: write one of dry, moist, wet.");
        assertThat(desk.type("soil", "MP2").err()).contains("dry, moist or wet", "--undo");
        assertThat(desk.type("soil", "MP2", "dry", "--undo").exitCode()).isEqualTo(2);
        assertThat(desk.type("soil", "MP2", "dry", "--at", "2026-07-13 09:00").err())
                .contains("still to come");
        assertThat(desk.at(InventedWeather.MONDAY.plus(Duration.ofDays(100)))
                        .type("soil", "MP2", "dry", "--at", "2026-07-13 09:00")
                        .err())
                .contains("tells nothing any more");
    }
}
