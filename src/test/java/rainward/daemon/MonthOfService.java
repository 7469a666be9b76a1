package rainward.daemon;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import rainward.brief.post.OutboxRow;
import rainward.daemon.board.OpenBoard;
import rainward.daemon.keep.NightDesk;
import rainward.daemon.keep.TroubleDesk;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.PostDesk;
import rainward.daemon.office.SurveyDesk;
import rainward.daemon.office.WeatherDesk;
import rainward.daemon.schedule.Job;
import rainward.daemon.schedule.Schedule;
import rainward.daemon.service.Rounds;
import rainward.feed.terms.Pacing;

/**
 * The service with its board in a process of its own, through many days as fast as the machine
 * goes: every turn of a job of Quartz is ten minutes of its clock. Weather fails every third time
 * and, three days in ten, for a whole day. Prints a line for each day: day, heap after collection
 * [KB], resident memory [KB], open files, messages that wait.
 */
final class MonthOfService implements AutoCloseable {

    private static final Instant START = Instant.parse("2026-07-13T09:10:00Z");
    private static final Duration TURN = Duration.ofMinutes(10);
    private static final int TURNS_A_DAY = 144;
    private static final int TURNS_AN_HOUR = 6;

    private final int turns;
    private final SplittableRandom random = new SplittableRandom(20260713);
    private final CountDownLatch done = new CountDownLatch(1);
    private final LiveForecast forecast;
    private final Office office;
    private final Rounds rounds;
    private final TroubleDesk troubles;
    private final NightDesk night;
    private final AtomicInteger turn = new AtomicInteger();

    private MonthOfService(Path home, int days) throws IOException {
        turns = days * TURNS_A_DAY;
        forecast = new LiveForecast(this::now, this::fault);
        Path settings = home.resolve("rainward.toml");
        Files.writeString(
                settings,
                Files.readString(settings)
                        .replace("FORECAST", forecast.address().toString()));
        office = Office.open(
                new HomeFolder(home), Office.settings(settings, Map.of()).settings(), this::now);
        new SurveyDesk(office).take(Path.of("config", "demo-fields.geojson"));
        PostDesk post = new PostDesk(office);
        rounds = new Rounds(office, new WeatherDesk(office, new Pacing(1, wait -> {})), post);
        troubles = new TroubleDesk(office, post);
        night = new NightDesk(office);
        rounds.brief();
        OpenBoard board = OpenBoard.asSet(office, rounds, post);
        System.out.println(board.words());
    }

    private Instant now() {
        return START.plus(TURN.multipliedBy(turn.get()));
    }

    private synchronized LiveForecast.Fault fault() {
        int day = turn.get() / TURNS_A_DAY;
        LiveForecast.Fault[] all = LiveForecast.Fault.values();
        // The first day is fair, and so is the last: who never had a forecast has none to keep.
        boolean fair = day == 0 || turn.get() > turns - TURNS_A_DAY;
        boolean out = day % 10 == 2 || day % 10 == 5 || day % 10 == 6;
        return fair ? LiveForecast.Fault.NONE : out ? LiveForecast.Fault.DOWN : drawn(all);
    }

    private LiveForecast.Fault drawn(LiveForecast.Fault[] all) {
        return random.nextInt(3) > 0
                ? LiveForecast.Fault.NONE
                : all[1 + random.nextInt(all.length - 1)];
    }

    public static void main(String[] args) throws Exception {
        Path home = Path.of(args[0]);
        try (MonthOfService month = new MonthOfService(home, Integer.parseInt(args[1]));
                Schedule schedule = Schedule.open(home.resolve("schedule.db"))) {
            schedule.put(new Job.Steady("ten minutes", Duration.ofMillis(20)), month::tenMinutes);
            schedule.start();
            month.done.await();
        }
        System.exit(0);
    }

    private void tenMinutes() {
        if (turn.get() >= turns) {
            done.countDown();
            return;
        }
        if (turn.get() % TURNS_AN_HOUR == 0) {
            rounds.turn();
        }
        rounds.briefIfMissed();
        rounds.send();
        troubles.look();
        night.workIfDue();
        if (turn.get() % TURNS_A_DAY == 0) {
            tell();
        }
        turn.incrementAndGet();
    }

    private void tell() {
        System.gc();
        long heapKb = ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() / 1024;
        System.out.println("day " + turn.get() / TURNS_A_DAY + " " + heapKb + " " + residentKb()
                + " " + openFiles() + " " + waiting());
    }

    private long waiting() {
        return office.store()
                .read(books -> books.outbox().in(OutboxRow.State.WAITING))
                .size();
    }

    private static long residentKb() {
        try {
            return Files.readAllLines(Path.of("/proc/self/status")).stream()
                    .filter(line -> line.startsWith("VmRSS:"))
                    .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
                    .findFirst()
                    .orElse(0);
        } catch (IOException e) {
            return 0;
        }
    }

    private static long openFiles() {
        try (Stream<Path> open = Files.list(Path.of("/proc/self/fd"))) {
            return open.count();
        } catch (IOException e) {
            return 0;
        }
    }

    @Override
    public void close() {
        System.out.println("end " + waiting());
        forecast.close();
    }
}
