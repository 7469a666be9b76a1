package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;
import rainward.farm.Window;
import rainward.store.Books;
import rainward.store.Store;
import rainward.weather.rain.RainObservation;
import rainward.weather.skill.SaidChance;

/** Chances held against what fell, learnt from, and told. */
class SkillIT {

    private static final String PROPERTY = "Mill Pond";
    private static final int PERIODS = 400;

    @TempDir
    Path home;

    private final InventedWeather weather = new InventedWeather();
    private Desk desk = new Desk(Path.of(""), Instant.EPOCH);

    @BeforeEach
    void settle() {
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

    /** A hundred days of a service that says p and gets rain with chance p cubed. */
    private void remember() {
        try (Store store = Store.open(home)) {
            store.inTransaction(books -> {
                var random = new SplittableRandom(5);
                Instant first =
                        Instant.parse("2026-07-13T06:00:00Z").minus(Duration.ofHours(6L * PERIODS));
                for (int i = 0; i < PERIODS; i++) {
                    Instant from = first.plus(Duration.ofHours(6L * i));
                    double p = random.nextInt(0, 11) / 10.0;
                    period(books, from, p, random.nextDouble() < p * p * p);
                }
                return PERIODS;
            });
        }
    }

    private static void period(Books books, Instant from, double p, boolean wet) {
        Window all = new Window(from, from.plus(Duration.ofHours(6)));
        List<SaidChance> said = new ArrayList<>();
        for (int lead : new int[] {14, 40}) {
            said.add(new SaidChance("nws", from.minus(Duration.ofHours(lead)), all, p));
        }
        books.chances().add(PROPERTY, said);
        for (int h = 0; h < 6; h++) {
            Instant at = from.plus(Duration.ofHours(h));
            var hour = new Window(at, at.plus(Duration.ofHours(1)));
            double mm = wet && h == 2 ? 3 : 0;
            books.rain().add(PROPERTY, new RainObservation(hour, mm, "stage4", all.to()), "stage4");
        }
    }

    private static JsonNode of(JsonNode properties) {
        for (JsonNode one : properties) {
            if (one.path("property").asText().equals(PROPERTY)) {
                return one;
            }
        }
        throw new AssertionError("no skill of " + PROPERTY);
    }

    @Test
    void aWetBiasedServiceIsSeenLearntFromAndCorrectedInTheNextRound() throws IOException {
        remember();
        assertThat(desk.type("pull").exitCode()).isZero();
        Path picture = home.resolve("skill.png");

        JsonNode sheet =
                desk.type("skill", "--json", "--picture", picture.toString()).json();

        JsonNode here = of(sheet.path("properties"));
        assertThat(here.path("learnedAt").asText()).startsWith("2026-07-13");
        JsonNode day = here.path("leads").path(0);
        assertThat(day.path("lead").asText()).isEqualTo("FIRST_DAY");
        assertThat(day.path("score").path("cases").asInt()).isBetween(395, PERIODS);
        assertThat(day.path("skill").asDouble())
                .isCloseTo(
                        1
                                - day.path("score").path("brierScore").asDouble()
                                        / day.path("usualBrierScore").asDouble(),
                        within(1e-9));
        JsonNode effect = day.path("recalibration").path("effect");
        assertThat(effect.path("afterBrierScore").asDouble())
                .isLessThan(effect.path("beforeBrierScore").asDouble());
        BufferedImage drawn = ImageIO.read(picture.toFile());
        assertThat(drawn.getWidth()).isGreaterThan(600);
        assertThat(desk.type("ready", "--json").out())
                .contains("chances of rain are corrected by what past forecasts came to");
    }

    @Test
    void withoutExperienceItSaysWhatIsMissing() {
        Desk.Said said = desk.type("skill");
        assertThat(said.exitCode()).isZero();
        assertThat(said.out())
                .contains("No forecast can be held against observed rain yet")
                .contains("No stand check");
    }

    @Test
    void aPictureThatCannotBeWrittenIsRefusedInOneSentence() {
        Desk.Said said =
                desk.type("skill", "--picture", home.resolve("no/where.png").toString());
        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("--picture: cannot write");
    }
}
