package rainward.daemon.board;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import org.awaitility.Awaitility;
import rainward.board.door.Person;
import rainward.board.house.Saying;
import rainward.board.house.Standing;
import rainward.board.house.Takes;
import rainward.daemon.demo.InventedWeather;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.PostDesk;
import rainward.daemon.office.SurveyDesk;
import rainward.daemon.office.WeatherDesk;
import rainward.daemon.service.Rounds;
import rainward.feed.terms.Pacing;

/** The invented crew's board on the Monday of its story, open at a free port of this machine. */
final class BoardStage implements AutoCloseable {

    private static final String FEW_TRACES = "\n";

    private final Path home;
    private final InventedWeather weather = new InventedWeather();
    private final Office office;
    private final Rounds rounds;
    private final OpenBoard board;
    private volatile Instant now = InventedWeather.MONDAY;

    BoardStage(Path home) {
        this(home, "");
    }

    /**
     * A stage.
     *
     * @param home an empty folder
     * @param more settings, added at the end
     */
    BoardStage(Path home, String more) {
        this(home, more, List.of());
    }

    BoardStage(Path home, String more, List<Person> people) {
        this(home, more, people, Path.of("config", "demo-fields.geojson"));
    }

    /** With other fields than the demo's; few traces, so that a thousand fields fit in memory. */
    BoardStage(Path home, Path fields) {
        this(home, FEW_TRACES, List.of(), fields);
    }

    private BoardStage(Path home, String more, List<Person> people, Path fields) {
        this.home = home;
        try {
            Path settings = home.resolve("rainward.toml");
            Files.writeString(settings, settings(more));
            InstantSource clock = () -> now;
            office = Office.open(
                    new HomeFolder(home), Office.settings(settings, Map.of()).settings(), clock);
            new SurveyDesk(office).take(fields);
            people.forEach(new PeopleBook(office)::admit);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        WeatherDesk desk = new WeatherDesk(office, new Pacing(1, wait -> {}));
        PostDesk post = new PostDesk(office, Map.of());
        rounds = new Rounds(office, desk, post);
        board = OpenBoard.open(office, rounds, post, 0);
        rounds.turn();
    }

    private String settings(String more) throws IOException {
        String traces = more.equals(FEW_TRACES) ? "traces = 20\nsources = " : "sources = ";
        String crew = Files.readString(Path.of("config", "demo.toml"))
                .replaceFirst("sources = ", traces)
                .replaceAll("(?s)\\n\\[weather\\.address\\].*?(?=\\n\\[)", "");
        return crew + """

                [weather.address]
                nws = "%s"
                acis = "%s"
                met_norway = "%s"

                [order]
                thinking = "0.2 s"
                """.formatted(weather.address(), weather.address(), weather.address()) + more;
    }

    /** Has the brief of the morning written into the outbox; once, however often it is called. */
    void mail() {
        rounds.brief();
    }

    Path home() {
        return home;
    }

    String link() {
        return board.words().replace("Board: ", "");
    }

    String link(String path) {
        return link() + path.replaceFirst("^/", "");
    }

    Office office() {
        return office;
    }

    Standing standing() {
        return board.standing();
    }

    void watch() {
        board.watch();
    }

    Takes.Taken take(Saying saying) {
        return board.takes().take(saying);
    }

    /** Everything that the journal holds about a field, in one text. */
    String history(String field) {
        return office.store().read(books -> books.journal().of(field)).toString();
    }

    void setClock(Instant later) {
        now = later;
    }

    Instant now() {
        return now;
    }

    /** Waits until no new order is being worked out. */
    void settled() {
        Awaitility.await().atMost(Duration.ofMinutes(5)).until(() -> !standing().reckoning());
    }

    @Override
    public void close() {
        board.close();
        office.close();
        weather.close();
    }
}
