package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;
import rainward.farm.Window;
import rainward.input.check.StandVerdict;
import rainward.store.Books;
import rainward.store.Store;
import rainward.store.journal.JournalEntry;
import rainward.store.journal.StandBook;
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
    void inItsFirstHourAServiceHasNothingToBeHeldAgainst() {
        try (Store store = Store.open(home)) {
            Instant hour = InventedWeather.MONDAY.truncatedTo(ChronoUnit.HOURS);
            Window ahead = new Window(hour, hour.plus(Duration.ofHours(6)));
            store.inTransaction(books -> {
                books.chances().add(PROPERTY, List.of(new SaidChance("nws", hour, ahead, 0.4)));
                return ahead;
            });
        }

        Instant inside = InventedWeather.MONDAY.plus(Duration.ofMinutes(10));
        assertThat(desk.at(inside).type("skill", "--json").exitCode()).isZero();
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

    /** Eighty looks at fields that were given chance p and came up with chance p. */
    private void look() {
        try (Store store = Store.open(home)) {
            store.inTransaction(books -> {
                var random = new SplittableRandom(11);
                for (int i = 0; i < 80; i++) {
                    double p = 0.3 + random.nextInt(0, 7) / 10.0;
                    boolean up = random.nextDouble() < p;
                    Instant at = Instant.parse("2026-07-01T15:00:00Z").plusSeconds(3600L * i);
                    books.stands()
                            .add(new StandBook.StandCheck(
                                    "MP1 Orchard Strip",
                                    up ? StandVerdict.UP : StandVerdict.THIN,
                                    Optional.of("clover and turnip"),
                                    new StandBook.Finding(
                                            OptionalDouble.empty(),
                                            OptionalDouble.of(p),
                                            Optional.empty(),
                                            Optional.empty()),
                                    new JournalEntry.Said(at, at, "Dell")));
                }
                return 80;
            });
        }
    }

    @Test
    void ourOwnChanceStandsBesideWhatCameUpInTextNumbersAndPicture() throws IOException {
        remember();
        look();
        Path picture = home.resolve("skill.png");

        JsonNode stands = desk.type("skill", "--json", "--picture", picture.toString())
                .json()
                .path("stands");

        assertThat(stands.path("checks").asInt()).isEqualTo(80);
        double told = 0;
        int cases = 0;
        for (JsonNode row : stands.path("reliability").path("rows")) {
            cases += row.path("cases").asInt();
            told += row.path("cases").asInt() * row.path("forecastProbability").asDouble();
            // Said and seen agree, so that nine in ten ranges should hold what was said.
            assertThat(row.path("forecastProbability").asDouble())
                    .isBetween(
                            row.path("lowFraction").asDouble() - 0.15,
                            row.path("highFraction").asDouble() + 0.15);
        }
        assertThat(cases).isEqualTo(80);
        assertThat(told / 80).isBetween(0.5, 0.7);
        assertThat(stands.path("score").path("brierScore").asDouble()).isBetween(0.1, 0.25);
        assertThat(desk.type("skill").out())
                .contains("Our chance of a stand against 80 stand checks");
        assertThat(ImageIO.read(picture.toFile()).getWidth()).isGreaterThan(600);
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
