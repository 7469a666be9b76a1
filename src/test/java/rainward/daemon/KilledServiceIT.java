package rainward.daemon;

import static java.util.stream.Collectors.counting;
import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toMap;
import static java.util.stream.Collectors.toSet;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
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
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.SurveyDesk;
import rainward.store.Store;
import rainward.store.round.BriefLog;

/**
 * The service is killed at random moments of its round and started again, as a real second process
 * with a real SMTP server: no brief is lost, and none comes twice beyond what SMTP itself cannot
 * rule out.
 */
class KilledServiceIT {

    static final ZoneId ZONE = ZoneId.of("America/Detroit");

    /** A few in every build; {@code -Drainward.kills=300} for the long run. */
    static final int KILLS = Integer.getInteger("rainward.kills", 6);

    @TempDir
    Path folder;

    GreenMail post;
    LiveForecast forecast;

    @BeforeEach
    void open() throws IOException {
        post = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
        post.start();
        forecast = new LiveForecast();
    }

    @AfterEach
    void close() {
        forecast.close();
        post.stop();
    }

    @Test
    void noBriefIsLostAndNoneComesTwiceHoweverTheServiceDies() throws Exception {
        Path home = readyHome();
        SplittableRandom random = new SplittableRandom(20260713);
        long wholeMs = KILLS > 6 ? 2 * startMs() : 9_000;
        for (int kill = 0; kill < KILLS; kill++) {
            Process service = start(home);
            Thread.sleep(random.nextLong(300, wholeMs));
            service.destroyForcibly().waitFor(20, TimeUnit.SECONDS);
            assertThat(isSound(home)).as("database after kill %d", kill).isTrue();
        }
        Process last = start(home);
        try {
            await().atMost(Duration.ofMinutes(5)).until(() -> briefs().size() >= 2);
            // What may come twice would come with the next turn of the post, within a minute.
            await().during(Duration.ofSeconds(3)).atMost(Duration.ofSeconds(6)).until(() -> true);
        } finally {
            last.destroyForcibly().waitFor(20, TimeUnit.SECONDS);
        }
        assertThat(briefs()).containsOnlyKeys("dell@burroak.example", "marnie@burroak.example");
        Map<String, Integer> tries = tries(home);
        briefs().forEach((recipient, copies) -> assertThat(copies)
                .as("copies to %s, of which a try that died may have been taken", recipient)
                .isBetween(1L, (long) tries.getOrDefault(recipient, 0)));
        assertThat(messageIds()).hasSize(2);
        System.out.println(KILLS + " kills within " + wholeMs
                + " ms of a start: database sound after each; copies of the brief " + briefs()
                + ", tries " + tries);
    }

    /** How long a start takes on this machine now, so that kills come before and after it. */
    private long startMs() throws IOException, InterruptedException {
        Path empty = Files.createDirectories(folder.resolve("empty"));
        Files.copy(folder.resolve("home/rainward.toml"), empty.resolve("rainward.toml"));
        long began = System.nanoTime();
        Process service = start(empty);
        await().atMost(Duration.ofMinutes(2))
                .until(() -> Files.readString(empty.resolve("service.out")).contains("Ready"));
        service.destroyForcibly().waitFor(20, TimeUnit.SECONDS);
        return (System.nanoTime() - began) / 1_000_000;
    }

    private static boolean isSound(Path home) {
        try (Store store = Store.open(home)) {
            return store.<String>read(books -> books.pragma("integrity_check")).equals("ok");
        }
    }

    /**
     * Tries by recipient. A server may take a message in the moment its sender dies, so a try that
     * was cut off can leave a copy: that is the stated limit. A message tried once comes once.
     */
    private static Map<String, Integer> tries(Path home) {
        try (Store store = Store.open(home)) {
            return store.read(books -> books.outbox().since(Instant.EPOCH)).stream()
                    .filter(row -> row.message().key().event().startsWith("brief/"))
                    .collect(toMap(
                            row -> row.message().key().recipient(),
                            row -> row.progress().tries()));
        }
    }

    /** Every copy of a message carries the same Message-ID, so that readers can tell it. */
    private Set<String> messageIds() {
        return Arrays.stream(post.getReceivedMessages())
                .map(KilledServiceIT::id)
                .filter(id -> id.startsWith("<brief."))
                .collect(toSet());
    }

    /** Briefs that the mail server has, by recipient. */
    private Map<String, Long> briefs() {
        return Arrays.stream(post.getReceivedMessages())
                .filter(mail -> id(mail).startsWith("<brief."))
                .collect(groupingBy(KilledServiceIT::recipient, counting()));
    }

    private static String id(MimeMessage mail) {
        try {
            return mail.getMessageID();
        } catch (MessagingException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String recipient(MimeMessage mail) {
        try {
            return mail.getAllRecipients()[0].toString().replaceAll(".*<|>.*", "");
        } catch (MessagingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** A folder whose crew had its brief yesterday and is due the next one a minute ago. */
    private Path readyHome() throws IOException {
        Path home = Files.createDirectories(folder.resolve("home"));
        LocalTime due = Instant.now().atZone(ZONE).toLocalTime().minusMinutes(1);
        String settings = Files.readString(Path.of("config", "demo.toml"))
                .replace("observed = [\"acis\"]", "observed = []")
                .replace(
                        "host = \"localhost\"",
                        "host = \"127.0.0.1\"\nport = " + post.getSmtp().getPort())
                .replace(
                        "[mail]",
                        "[weather.address]\nnws = \"" + forecast.address()
                                + "\"\n\n[brief]\ntime = \"" + due.truncatedTo(ChronoUnit.MINUTES)
                                + "\"\n\n[mail]");
        Path file = home.resolve("rainward.toml");
        Files.writeString(file, settings);
        try (Office office = Office.open(
                new HomeFolder(home),
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
        return home;
    }

    private static Process start(Path home) throws IOException {
        List<String> command = List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx300m",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                "rainward.daemon.Main",
                "run",
                "--home",
                home.toString());
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(
                        home.resolve("service.out").toFile()))
                .start();
    }
}
