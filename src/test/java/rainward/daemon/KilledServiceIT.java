package rainward.daemon;

import static java.util.stream.Collectors.counting;
import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toSet;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import rainward.brief.post.OutboxRow;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.SurveyDesk;
import rainward.store.EachEngine;
import rainward.store.Store;
import rainward.store.TestEngine;
import rainward.store.round.BriefLog;

/**
 * The service is killed at random moments over days of its clock and started again, as a real
 * second process with a real SMTP server and a forecast service that fails every third time, while
 * a person tells the board one note after the other: no note is lost that was confirmed, no brief
 * is lost, and none comes twice beyond what SMTP itself cannot rule out.
 */
@EachEngine
class KilledServiceIT {

    static final ZoneId ZONE = ZoneId.of("America/Detroit");

    /** A few in every build; {@code -Drainward.kills=300} for the long run, a week. */
    static final int KILLS = Integer.getInteger("rainward.kills", 6);

    /** From one start to the next, by the service's clock: 300 kills are a week. */
    private static final Duration STEP = Duration.ofDays(7).dividedBy(300);

    /** Kills of half a day. */
    private static final int LIVES_TO_A_BRIEF = 21;

    /** Beyond it even a very busy machine stands still. */
    private static final Duration LONGEST = Duration.ofMinutes(10);

    private static final Duration DAY = Duration.ofDays(1);

    @Parameter
    TestEngine engine = TestEngine.SQLITE;

    @TempDir
    Path folder;

    private final SplittableRandom random = new SplittableRandom(20260713);
    private final Instant began = Instant.now();
    private volatile Duration ahead = Duration.ZERO;
    private GreenMail post;
    private LiveForecast forecast;
    private Path home;
    private int port;

    @BeforeEach
    void open() throws IOException {
        post = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
        post.start();
        forecast = new LiveForecast(() -> Instant.now().plus(ahead), this::fault);
        port = freePort();
        home = readyHome();
    }

    @AfterEach
    void close() {
        forecast.close();
        post.stop();
    }

    private static int freePort() throws IOException {
        try (ServerSocket any = new ServerSocket(0)) {
            return any.getLocalPort();
        }
    }

    /** Two in three are answered as they should be. */
    private LiveForecast.Fault fault() {
        synchronized (random) {
            LiveForecast.Fault[] all = LiveForecast.Fault.values();
            return random.nextInt(3) > 0
                    ? LiveForecast.Fault.NONE
                    : all[1 + random.nextInt(all.length - 1)];
        }
    }

    @Test
    void nothingConfirmedIsLostHoweverTheServiceDies() throws Exception {
        long startMs = startMs();
        List<String> confirmed;
        try (TellingPerson person = new TellingPerson(port)) {
            for (int kill = 0; kill < KILLS; kill++) {
                killed(kill, startMs);
                assertThat(isSound()).as("database after kill %d", kill).isTrue();
                ahead = ahead.plus(STEP);
            }
            confirmed = person.confirmed();
        }
        Duration caughtUp = catchUp();
        assertThat(lost(confirmed)).as("of %d notes", confirmed.size()).isEmpty();
        List<OutboxRow> briefs = briefsWritten();
        Map<String, Long> copies = copies();
        assertThat(copies.keySet()).isEqualTo(ids(briefs));
        briefs.forEach(row -> assertThat(copies.get(id(row)))
                .as("copies of %s, of which a try that died may have been taken", id(row))
                .isBetween(1L, (long) row.progress().tries()));
        assertThat(confirmed).isNotEmpty();
        System.out.println(told(confirmed, copies, caughtUp));
    }

    private String told(List<String> confirmed, Map<String, Long> copies, Duration caughtUp) {
        long all = copies.values().stream().mapToLong(Long::longValue).sum();
        return String.format(
                "%s: %d kills over %.1f days: database sound after each; %d"
                        + " notes confirmed, none lost; %d briefs of %d days, %d copies too many;"
                        + " whole %d s after the last start",
                engine,
                KILLS,
                ahead.toMinutes() / 1440.0,
                confirmed.size(),
                copies.size(),
                daysDue(),
                all - copies.size(),
                caughtUp.toSeconds());
    }

    /**
     * Half of the lives end in their start, the others after it, counted from when the service is
     * ready: a busy machine takes long to start one and must not keep every life from its work.
     * Once in half a day a life gets as far as the briefs that are due.
     */
    private void killed(int kill, long startMs) throws IOException, InterruptedException {
        Process service = start(home);
        try {
            if (kill % LIVES_TO_A_BRIEF == LIVES_TO_A_BRIEF - 1) {
                await().atMost(LONGEST).until(() -> copies().size() >= 2 * daysDue());
            } else if (kill % 2 == 1) {
                await().atMost(LONGEST).until(this::isReady);
            }
            Thread.sleep(drawn(startMs));
        } finally {
            service.destroyForcibly().waitFor(20, TimeUnit.SECONDS);
        }
    }

    private long drawn(long mostMs) {
        synchronized (random) {
            return random.nextLong(mostMs);
        }
    }

    /** The board answers, and with it all that was opened before it. */
    private boolean isReady() {
        try (Socket line = new Socket(InetAddress.getLoopbackAddress(), port)) {
            return line.isConnected();
        } catch (IOException notYet) {
            return false;
        }
    }

    /** The last start lives until every brief that was due is out; how long that took. */
    private Duration catchUp() throws IOException, InterruptedException {
        long start = System.nanoTime();
        Process last = start(home);
        try {
            await().atMost(Duration.ofMinutes(10)).until(() -> copies().size() >= 2 * daysDue());
            Duration took = Duration.ofNanos(System.nanoTime() - start);
            // What may come twice would come with the next turn of the post, within a minute.
            await().during(Duration.ofSeconds(3)).atMost(Duration.ofSeconds(6)).until(() -> true);
            return took;
        } finally {
            last.destroyForcibly().waitFor(20, TimeUnit.SECONDS);
        }
    }

    /** Days whose brief was due by the service's clock since it began. */
    private int daysDue() {
        return 1 + (int) (ahead.toMillis() / DAY.toMillis());
    }

    /** How long a start takes on this machine now, so that kills come before and after it. */
    private long startMs() throws IOException, InterruptedException {
        Path empty = Files.createDirectories(folder.resolve("empty"));
        Files.writeString(empty.resolve("rainward.toml"), settings() + engine.settings(empty));
        long start = System.nanoTime();
        Process service = start(empty);
        await().atMost(LONGEST)
                .until(() -> Files.readString(empty.resolve("service.out")).contains("Ready"));
        service.destroyForcibly().waitFor(20, TimeUnit.SECONDS);
        return (System.nanoTime() - start) / 1_000_000;
    }

    private boolean isSound() {
        try (Store store = engine.open(home)) {
            return store.soundness().equals("ok");
        }
    }

    /** Confirmed notes that the journal does not hold. */
    private List<String> lost(List<String> confirmed) {
        try (Store store = engine.open(home)) {
            String kept =
                    store.read(books -> books.journal().of(TellingPerson.FIELD)).toString();
            return confirmed.stream().filter(note -> !kept.contains(note)).toList();
        }
    }

    /**
     * Briefs in the outbox, with their tries. A server may take a message in the moment its sender
     * dies, so a try that was cut off can leave a copy: that is the stated limit. A message tried
     * once comes once.
     */
    private List<OutboxRow> briefsWritten() {
        try (Store store = engine.open(home)) {
            return store.read(books -> books.outbox().since(began.minus(DAY))).stream()
                    .filter(row -> row.message().key().event().startsWith("brief/"))
                    .toList();
        }
    }

    private static Set<String> ids(List<OutboxRow> rows) {
        return rows.stream().map(KilledServiceIT::id).collect(toSet());
    }

    private static String id(OutboxRow row) {
        return id(mail(row.message().content()));
    }

    private static MimeMessage mail(byte[] content) {
        try {
            return new MimeMessage(null, new ByteArrayInputStream(content));
        } catch (MessagingException e) {
            throw new IllegalStateException(e);
        }
    }

    /**
     * Copies that the mail server has of each brief, by the Message-ID by which readers tell it.
     */
    private Map<String, Long> copies() {
        return Arrays.stream(post.getReceivedMessages())
                .map(KilledServiceIT::id)
                .filter(id -> id.startsWith("<brief."))
                .collect(groupingBy(id -> id, counting()));
    }

    private static String id(MimeMessage mail) {
        try {
            return mail.getMessageID();
        } catch (MessagingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The crew is due its brief a minute ago. */
    private String settings() throws IOException {
        LocalTime due = began.atZone(ZONE).toLocalTime().minusMinutes(1);
        return Files.readString(Path.of("config", "demo.toml"))
                .replace("observed = [\"acis\"]", "observed = []")
                .replace("sources = [\"nws\", \"met-norway\"]", "sources = [\"nws\"]")
                .replace(
                        "host = \"localhost\"",
                        "host = \"127.0.0.1\"\nport = " + post.getSmtp().getPort())
                .replace(
                        "[mail]",
                        "[weather.address]\nnws = \"" + forecast.address()
                                + "\"\n\n[board]\nport = " + port + "\n\n[brief]\ntime = \""
                                + due.truncatedTo(ChronoUnit.MINUTES) + "\"\n\n[mail]");
    }

    /** A folder whose crew had its brief yesterday and is due the next one. */
    private Path readyHome() throws IOException {
        Path made = Files.createDirectories(folder.resolve("home"));
        Path file = made.resolve("rainward.toml");
        Files.writeString(file, settings() + engine.settings(made));
        try (Office office = Office.open(
                new HomeFolder(made),
                Office.settings(file, Map.of()).settings(),
                InstantSource.system())) {
            new SurveyDesk(office).take(Path.of("config", "demo-fields.geojson"));
            Instant yesterday = office.now().minus(Duration.ofHours(24));
            LocalDate day = LocalDate.ofInstant(yesterday, ZONE);
            office.store()
                    .inTransaction(books -> books.briefs()
                            .take(new BriefLog.WrittenBrief(
                                    day.minusDays(1), yesterday, yesterday, false, "")));
        }
        return made;
    }

    /** Quartz knows the PC's clock only: without its file each job's turn is due at the start. */
    private Process start(Path place) throws IOException {
        for (String file : List.of("schedule.db", "schedule.db-wal", "schedule.db-shm")) {
            Files.deleteIfExists(place.resolve(file));
        }
        List<String> command = List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx300m",
                "-XX:+UseSerialGC",
                "-Djava.awt.headless=true",
                "-D" + ServiceByClock.AHEAD + "=" + ahead.toMillis(),
                "-cp",
                System.getProperty("java.class.path"),
                ServiceByClock.class.getName(),
                "run",
                "--home",
                place.toString());
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(
                        place.resolve("service.out").toFile()))
                .start();
    }
}
