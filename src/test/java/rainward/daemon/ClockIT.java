package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;
import rainward.daemon.keep.NightDesk;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.PostDesk;
import rainward.daemon.office.WeatherDesk;
import rainward.daemon.service.Rounds;

/** What a clock that is set does to the work of a day. */
class ClockIT {

    /** Ten minutes after the brief's hour. */
    private static final Instant MONDAY = InventedWeather.MONDAY.plus(Duration.ofMinutes(10));

    private static final LocalDate DAY = LocalDate.of(2026, 7, 13);

    @TempDir
    Path home;

    private final InventedWeather weather = new InventedWeather();
    private Desk desk;

    @BeforeEach
    void fields() {
        desk = new Desk(home, MONDAY)
                .withWeatherFrom(weather.address(), "\n[order]\nthinking = \"0.05 s\"\n");
        desk.type("import", "config/demo-fields.geojson");
    }

    @AfterEach
    void close() {
        weather.close();
    }

    /** The clock shows so many days after Monday; what is due is done. */
    private boolean briefAt(int days) {
        try (Office office = open(days)) {
            new NightDesk(office).workIfDue();
            return new Rounds(office, new WeatherDesk(office), new PostDesk(office))
                    .brief()
                    .isPresent();
        }
    }

    private Office open(int days) {
        return Office.open(
                new HomeFolder(home),
                Office.settings(desk.settings(), Map.of()).settings(),
                InstantSource.fixed(MONDAY.plus(Duration.ofDays(days))));
    }

    private List<LocalDate> briefed() {
        try (Office office = open(0)) {
            return office.store()
                    .read(books -> Stream.iterate(DAY.minusDays(3), d -> d.plusDays(1))
                            .limit(9)
                            .filter(day -> books.briefs().of(day).isPresent())
                            .toList());
        }
    }

    @Test
    void clockSetBackBringsNoSecondBriefAndNoSecondNight() {
        assertThat(briefAt(0)).isTrue();

        assertThat(briefAt(-1)).isFalse();
        assertThat(briefAt(0)).isFalse();

        assertThat(briefed()).containsExactly(DAY);
        assertThat(home.resolve("backups"))
                .isDirectoryContaining("glob:**/rainward-2026-07-13.db")
                .isDirectoryNotContaining("glob:**/rainward-2026-07-12.db");
    }

    @Test
    void clockSetAheadAndBackBringsEachBriefOnce() {
        assertThat(briefAt(0)).isTrue();
        assertThat(briefAt(3)).isTrue();

        assertThat(briefAt(0)).isFalse();
        assertThat(briefAt(1)).as("Tuesday comes as if nothing had been").isTrue();
        assertThat(briefAt(3)).isFalse();

        assertThat(briefed()).containsExactly(DAY, DAY.plusDays(1), DAY.plusDays(3));
    }
}
