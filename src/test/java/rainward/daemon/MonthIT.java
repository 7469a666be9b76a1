package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Days of the service with everything failing now and then: what it holds does not grow. */
class MonthIT {

    /** A day takes a minute, and few days tell no slope: it runs where it is asked for. */
    static final int DAYS = Integer.getInteger("rainward.days", 30);

    /** Until here the runtime still compiles and caches fill. */
    private static final int SETTLED = Math.min(5, DAYS / 2);

    /** A slope below this is no growth that anybody would meet in a year [KB a day]. */
    private static final double FLAT_KB = 100;

    @TempDir
    Path folder;

    private final List<Day> days = new ArrayList<>();
    private GreenMail post;
    private int port;
    private long waitedAtEnd = -1;
    private volatile boolean over;

    /** What the process held. */
    record Day(int day, double heapKb, double residentKb, double files, double waiting) {

        static Day of(String line) {
            String[] words = line.split(" ", -1);
            return new Day(
                    Integer.parseInt(words[1]),
                    Double.parseDouble(words[2]),
                    Double.parseDouble(words[3]),
                    Double.parseDouble(words[4]),
                    Double.parseDouble(words[5]));
        }
    }

    @BeforeEach
    void open() throws IOException {
        port = freePort();
        // Named, so that it is the same after it was away.
        post = new GreenMail(new ServerSetup(freePort(), "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
        post.start();
    }

    private static int freePort() throws IOException {
        try (ServerSocket any = new ServerSocket(0)) {
            return any.getLocalPort();
        }
    }

    @AfterEach
    void close() {
        over = true;
        post.stop();
    }

    @Test
    @EnabledIfSystemProperty(
            named = "rainward.days",
            matches = "\\d{2,}",
            disabledReason = "asked for by -Drainward.days=30, ten days at least")
    @EnabledOnOs(value = OS.LINUX, disabledReason = "memory and files are read from /proc")
    void whatTheServiceHoldsDoesNotGrow() throws Exception {
        settings();
        Process service = start();
        Thread looking = new Thread(this::look, "looking");
        looking.setDaemon(true);
        looking.start();
        read(service);
        assertThat(service.waitFor()).isZero();
        Slope heap = Slope.of(settled(), Day::heapKb);
        Slope files = Slope.of(settled(), Day::files);
        System.out.printf(
                "%d days: heap %s KB a day, resident %s KB a day, files %s a day; %s%n",
                DAYS, heap, Slope.of(settled(), Day::residentKb), files, days);
        assertThat(days).hasSize(DAYS);
        assertThat(waitedAtEnd).as("messages left in the outbox").isZero();
        assertThat(heap.least()).as("least slope of the heap, 95 %%").isLessThan(FLAT_KB);
        assertThat(files.least()).as("least slope of open files, 95 %%").isLessThan(0.2);
    }

    private List<Day> settled() {
        return days.subList(SETTLED, days.size());
    }

    /** Least squares over days, with the error of the slope. */
    record Slope(double perDay, double error) {

        static Slope of(List<Day> days, ToDoubleFunction<Day> value) {
            double n = days.size();
            double meanX = days.stream().mapToDouble(Day::day).average().orElse(0);
            double meanY = days.stream().mapToDouble(value).average().orElse(0);
            double xx = 0;
            double xy = 0;
            double yy = 0;
            for (Day day : days) {
                double x = day.day() - meanX;
                double y = value.applyAsDouble(day) - meanY;
                xx += x * x;
                xy += x * y;
                yy += y * y;
            }
            double slope = xy / xx;
            double left = Math.max(0, yy - slope * xy);
            return new Slope(slope, n > 2 ? Math.sqrt(left / (n - 2) / xx) : 0);
        }

        double least() {
            return perDay - 1.96 * error;
        }

        @Override
        public String toString() {
            return String.format("%.2f +- %.2f", perDay, 1.96 * error);
        }
    }

    private void read(Process service) throws IOException {
        try (BufferedReader said = service.inputReader()) {
            for (String line = said.readLine(); line != null; line = said.readLine()) {
                System.out.println(line);
                if (line.startsWith("day ")) {
                    days.add(Day.of(line));
                    mailFails();
                } else if (line.startsWith("end ")) {
                    waitedAtEnd = Long.parseLong(line.substring(4));
                }
            }
        }
    }

    /** The mail server is away for a while, every day but the last two. */
    private void mailFails() {
        if (days.size() < DAYS - 1) {
            post.stop();
            pause(2_000);
            post.start();
        }
    }

    /** Somebody has the pages open all the time. */
    private void look() {
        HttpClient client = HttpClient.newHttpClient();
        while (!over) {
            for (String page : List.of("", "weather", "season", "health", "metrics")) {
                HttpRequest request = HttpRequest.newBuilder(
                                URI.create("http://127.0.0.1:" + port + "/" + page))
                        .timeout(Duration.ofSeconds(20))
                        .build();
                try {
                    client.send(request, HttpResponse.BodyHandlers.discarding());
                } catch (IOException down) {
                    pause(500);
                } catch (InterruptedException e) {
                    return;
                }
            }
            pause(500);
        }
    }

    private static void pause(long ms) {
        try {
            Thread.sleep(ms);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void settings() throws IOException {
        Files.writeString(
                folder.resolve("rainward.toml"),
                Files.readString(Path.of("config", "demo.toml"))
                        .replace("observed = [\"acis\"]", "observed = []")
                        .replace(
                                "sources = [\"nws\", \"met-norway\"]",
                                "sources = [\"nws\"]\ntraces = 20\nanswer_within = \"1 s\"\n"
                                        + "call_within = \"2 s\"")
                        .replace(
                                "host = \"localhost\"",
                                "host = \"127.0.0.1\"\nport = " + post.getSmtp().getPort())
                        .replace(
                                "[mail]",
                                "[weather.address]\nnws = \"FORECAST\"\n\n[board]\nport = " + port
                                        + "\n\n[order]\nthinking = \"0.05 s\"\n\n[mail]"));
    }

    private Process start() throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx320m",
                        "-Xss512k",
                        "-XX:+UseSerialGC",
                        "-Djava.awt.headless=true",
                        "-cp",
                        System.getProperty("java.class.path"),
                        MonthOfService.class.getName(),
                        folder.toString(),
                        String.valueOf(DAYS))
                .redirectErrorStream(true)
                .start();
    }
}
