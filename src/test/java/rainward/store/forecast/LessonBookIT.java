package rainward.store.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import rainward.farm.Window;
import rainward.store.EachEngine;
import rainward.store.Store;
import rainward.store.TestEngine;
import rainward.weather.skill.ForecastCase;
import rainward.weather.skill.Recalibration;
import rainward.weather.skill.SaidChance;

/** What was said and what it taught, kept with its dates. */
@EachEngine
class LessonBookIT {

    private static final Instant NOON = Instant.parse("2026-07-15T12:00:00Z");
    private static final Window PERIOD = new Window(NOON, NOON.plus(Duration.ofHours(6)));

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

    private void say(int hoursAhead, double chance) {
        store.inTransaction(books -> {
            books.chances()
                    .add(
                            "Mill Pond",
                            List.of(new SaidChance(
                                    "nws",
                                    NOON.minus(Duration.ofHours(hoursAhead)),
                                    PERIOD,
                                    chance)));
            return chance;
        });
    }

    @Test
    void ofOneLeadClassTheLastForecastBeforeItsMiddleIsKept() {
        say(60, 0.9);
        say(22, 0.5);
        say(14, 0.4);
        say(5, 0.1);
        List<SaidChance> said = store.read(books -> books.chances()
                .of("Mill Pond", new Window(NOON.minusSeconds(1), NOON.plusSeconds(1))));
        assertThat(said).extracting(SaidChance::probability).containsExactly(0.9, 0.4);
    }

    @Test
    void aLateStartKeepsWhatThereIs() {
        say(5, 0.1);
        List<SaidChance> said = store.read(books -> books.chances().of("Mill Pond", PERIOD));
        assertThat(said).hasSize(1);
    }

    @Test
    void theLessonInForceIsThatOfTheMoment() {
        Recalibration first = taught(300);
        Recalibration second = taught(500);
        store.inTransaction(books -> {
            books.lessons().add("Mill Pond", new LessonBook.Lesson(NOON, first));
            books.lessons()
                    .add("Mill Pond", new LessonBook.Lesson(NOON.plusSeconds(86_400), second));
            return first;
        });
        assertThat(inForce(NOON.minusSeconds(1))).isEmpty();
        assertThat(inForce(NOON.plusSeconds(60))).contains(new LessonBook.Lesson(NOON, first));
        LessonBook.Lesson later = inForce(NOON.plusSeconds(90_000)).orElseThrow();
        assertThat(later.taught()).isEqualTo(second);
        assertThat(later.taught().apply(0.6, 5)).isEqualTo(second.apply(0.6, 5));
    }

    private Optional<LessonBook.Lesson> inForce(Instant moment) {
        return store.read(books -> books.lessons().inForce("Mill Pond", moment));
    }

    private static Recalibration taught(int cases) {
        return Recalibration.of(
                IntStream.range(0, cases)
                        .mapToObj(i -> new ForecastCase(5, i % 10 / 10.0, i % 4 == 0))
                        .toList(),
                200);
    }
}
