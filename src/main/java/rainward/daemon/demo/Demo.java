package rainward.daemon.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import rainward.brief.Brief;
import rainward.brief.post.Outgoing;
import rainward.daemon.board.OpenBoard;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.PostDesk;
import rainward.daemon.office.StandDesk;
import rainward.daemon.office.SurveyDesk;
import rainward.daemon.office.WeatherDesk;
import rainward.daemon.service.Rounds;
import rainward.daemon.settings.Settings;
import rainward.daemon.settings.Spelled;
import rainward.daemon.yard.EnterDesk;
import rainward.farm.Window;
import rainward.feed.terms.Pacing;
import rainward.intake.RecordTable;
import rainward.queue.problem.PlanItem;
import rainward.weather.rain.RainObservation;
import rainward.weather.rain.RainOrigin;
import rainward.window.WindowDecision;

/** Goes through the demo's story, hour by hour where something happens. */
public final class Demo {

    private static final LocalDate MONDAY = LocalDate.of(2026, 7, 13);

    private static final int LAST_DAY = 11;

    /** What the gauges held on Thursday after the storm [mm]; the weather is invented. */
    private static final Map<String, Double> STORM_MM = Map.of(
            "Mill Pond", 21.0,
            "Stone Church", 29.5,
            "Sandhill", 17.0,
            "Otter Creek", 3.5,
            "Kettle Lake", 14.0,
            "North Forty", 24.5);

    /** Fields on which some stages were done in the week before the story begins. */
    private static final Map<String, List<String>> LAST_WEEK = Map.of(
            "MP1", List.of("spread", "disk"),
            "MP2", List.of("spread", "disk", "till"),
            "MP3", List.of("spread", "disk"),
            "MP5", List.of("spread", "disk"),
            "SC1", List.of("spread", "disk"),
            "SC3", List.of("spread"),
            "SC5", List.of("spread"),
            "SH1", List.of("spread", "disk"),
            "NF1", List.of("spread"));

    private final Office office;
    private final DemoClock clock;
    private final Telling telling;
    private final Rounds rounds;
    private final DemoCrew crew;

    private Demo(Office office, DemoClock clock, Telling telling, Rounds rounds) {
        this.office = office;
        this.clock = clock;
        this.telling = telling;
        this.rounds = rounds;
        this.crew = new DemoCrew(office);
    }

    /**
     * How the demo is shown.
     *
     * @param home data folder; what an earlier demo left there is taken away
     * @param once the first morning only
     * @param out where it is told
     * @param terminal true where a person watches
     * @param stay true where the board stays open at the end
     */
    public record Show(
            HomeFolder home,
            boolean once,
            java.io.PrintWriter out,
            boolean terminal,
            boolean stay) {}

    /** Runs the demo. */
    public static void run(Show show) throws IOException {
        DemoClock clock = new DemoClock(Instant.EPOCH);
        HomeFolder home = show.home().made();
        Files.write(home.settings(), DemoFiles.bytes("/config/demo.toml"));
        try (DemoServer server = DemoServer.start(clock)) {
            Settings settings =
                    at(server, Office.settings(home.settings(), Map.of()).settings());
            clock.setTo(local(settings, MONDAY.atTime(4, 50)));
            try (Office office = Office.open(home, settings, clock)) {
                MailFolder mail = new MailFolder(home.path().resolve("demo-mail"));
                PostDesk post = new PostDesk(office, Map.of(Outgoing.Channel.MAIL, mail));
                WeatherDesk weather = new WeatherDesk(office, new Pacing(1, wait -> {}));
                Telling telling = new Telling(show.out(), office.dayClock(), show.terminal());
                Rounds rounds = new Rounds(office, weather, post);
                try (OpenBoard board = OpenBoard.somewhere(office, rounds, post)) {
                    telling.heading(board.words());
                    new Demo(office, clock, telling, rounds).tell(show.once());
                    telling.heading("Every mail lies in " + home.path().resolve("demo-mail"));
                    if (show.stay()) {
                        stay(new Staying(telling, clock, rounds), board);
                    }
                }
            }
        }
    }

    private record Staying(Telling telling, DemoClock clock, Rounds rounds) {}

    /** Time goes by as it does outside, and the service goes on, until somebody ends it. */
    private static void stay(Staying staying, OpenBoard board) {
        staying.telling()
                .heading(board.words() + " stays open until you stop it with Ctrl-C; it is "
                        + "the hour of the story there.");
        staying.clock().letRun();
        try {
            for (int minute = 1; true; minute++) {
                Thread.sleep(Duration.ofMinutes(1).toMillis());
                staying.rounds().brief();
                if (minute % 60 == 0) {
                    staying.rounds().turn();
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static Settings at(DemoServer server, Settings settings) {
        return settings.with(settings.weather()
                .by(Settings.Way.to(Map.of(
                        Settings.Server.NWS, server.address(),
                        Settings.Server.ACIS, server.address()))));
    }

    private static Instant local(Settings settings, LocalDateTime time) {
        return time.atZone(settings.farm().zone()).toInstant();
    }

    private void tell(boolean once) throws IOException {
        telling.heading(
                "Burr Oak Seeding, southern Michigan: an invented crew in an invented July");
        takeFieldsIn();
        morning(MONDAY);
        if (once) {
            return;
        }
        afternoon(MONDAY, 16);
        morning(MONDAY.plusDays(1));
        afternoon(MONDAY.plusDays(1), 16);
        morning(MONDAY.plusDays(2));
        afternoon(MONDAY.plusDays(2), 16);
        morning(MONDAY.plusDays(3));
        readGauges(MONDAY.plusDays(3));
        afternoon(MONDAY.plusDays(3), 16);
        for (int day = 4; day <= LAST_DAY; day++) {
            morning(MONDAY.plusDays(day));
        }
        lookAtStands(MONDAY.plusDays(LAST_DAY));
    }

    private void takeFieldsIn() throws IOException {
        Path file = Files.createTempFile("demo-fields", ".geojson");
        try {
            Files.write(file, DemoFiles.bytes("/config/demo-fields.geojson"));
            var took = new SurveyDesk(office).take(file);
            telling.say(
                    office.now(),
                    took.counts().added() + took.counts().updated() + " fields on "
                            + office.properties().size() + " properties; three weeks without rain");
        } finally {
            Files.deleteIfExists(file);
        }
        takeRecordsIn();
        int stages = crew.hasDone(LAST_WEEK);
        telling.add(stages + " stages were done last week");
    }

    /** Soil tests, tags, harvests and the shed as it was counted on Sunday. */
    private void takeRecordsIn() throws IOException {
        int lines = 0;
        for (RecordTable.Kind kind : RecordTable.Kind.values()) {
            String name = Spelled.dashed(kind) + ".csv";
            if (kind != RecordTable.Kind.SPRAYS) {
                Path file = Files.createTempFile("demo-records", ".csv");
                try {
                    Files.write(file, DemoFiles.bytes("/config/demo-records/" + name));
                    lines += new EnterDesk(office).take(file, kind, "Dell").written();
                } finally {
                    Files.deleteIfExists(file);
                }
            }
        }
        telling.add(lines + " soil tests, tags, harvests and weights of the shed");
    }

    private void until(LocalDate day, int hour, int minute) {
        Instant at = day.atTime(hour, minute).atZone(office.zone()).toInstant();
        List<PlanItem> done = crew.workUntil(at);
        clock.setTo(at);
        if (!done.isEmpty()) {
            telling.say(at, "the crew has done " + done.size() + " stages: " + words(done));
        }
    }

    private static String words(List<PlanItem> done) {
        Map<String, Long> stages = done.stream()
                .collect(Collectors.groupingBy(
                        i -> i.place().stage(), java.util.TreeMap::new, Collectors.counting()));
        return stages.entrySet().stream()
                .map(e -> e.getValue() + " x " + e.getKey())
                .collect(Collectors.joining(", "));
    }

    private void morning(LocalDate day) {
        until(day, 5, 0);
        rounds.brief().ifPresent(morning -> {
            tellBrief(morning.brief());
            morning.told().forEach(this::tellWindow);
        });
    }

    private void tellBrief(Brief brief) {
        telling.say(
                office.now(),
                "BRIEF  "
                        + rainward.brief.plain.BriefText.subject(
                                brief, office.settings().farm().units()));
        brief.orders().today().stream()
                .limit(3)
                .forEach(line -> telling.add(
                        line.rank() + ". " + line.place().field() + ": " + line.reason()));
        brief.changes().stream()
                .limit(3)
                .forEach(change -> telling.add("changed: " + change.field() + " "
                        + Spelled.spaced(change.kind())
                        + ", " + change.why()));
    }

    private void afternoon(LocalDate day, int hour) {
        until(day, hour, 0);
        Rounds.Turn turn = rounds.turn();
        rounds.send();
        telling.say(
                office.now(),
                "new forecast; " + turn.result().outlook().plan().items().size()
                        + " stages in the order");
        if (day.equals(MONDAY.plusDays(3))) {
            telling.add("workable again: all but " + tooWet(turn) + " of " + waiting(turn)
                    + " waiting fields");
        }
        turn.publicAlerts()
                .forEach(alert ->
                        telling.add("ALERT  " + alert.local().alert().message().headline()));
        turn.told().forEach(this::tellWindow);
    }

    private void tellWindow(WindowDecision decision) {
        telling.add("ALERT  storm window " + decision.step() + " at "
                + String.join(", ", decision.window().properties()) + ": " + decision.words());
        decision.window().fits().stream()
                .limit(3)
                .forEach(fit -> telling.add("fits: " + fit.field() + ", last safe start "
                        + office.dayClock().dayTime(fit.lastSafeStart())));
    }

    private void readGauges(LocalDate day) {
        until(day, 8, 0);
        Instant now = office.now();
        Window night = new Window(now.minus(Duration.ofHours(13)), now);
        office.store().inTransaction(books -> {
            STORM_MM.forEach((property, mm) -> books.rain()
                    .add(
                            property,
                            new RainObservation(night, mm, RainOrigin.GAUGE_SOURCE, now),
                            "Dell"));
            return STORM_MM.size();
        });
        telling.say(
                now,
                "gauges read: "
                        + STORM_MM.entrySet().stream()
                                .sorted(Map.Entry.comparingByKey())
                                .map(e -> e.getKey() + " "
                                        + office.settings().farm().units().rain(e.getValue()))
                                .collect(Collectors.joining(", ")));
        Rounds.Turn turn = rounds.turn();
        turn.told().forEach(this::tellWindow);
        telling.add(
                "too wet to work: " + tooWet(turn) + " of " + waiting(turn) + " waiting fields");
    }

    private static long waiting(Rounds.Turn turn) {
        return turn.result().outlook().fields().stream()
                .filter(f -> f.item().status().waiting())
                .count();
    }

    private static long tooWet(Rounds.Turn turn) {
        return turn.result().outlook().fields().stream()
                .flatMap(f -> f.seedbed().stream())
                .filter(bed -> bed.workableFrom()
                        .filter(at -> !at.isAfter(turn.result().outlook().asOf()))
                        .isEmpty())
                .count();
    }

    private void lookAtStands(LocalDate day) {
        until(day, 18, 0);
        telling.heading("What came up, eleven days after the first seed");
        List<StandDesk.Look> looks = new StandDesk(office).lookAtAll();
        for (StandDesk.Look look : looks) {
            telling.add(look.field() + ": " + look.words());
        }
        telling.say(
                office.now(),
                "of " + looks.size() + " seeded fields "
                        + count(looks, StandDesk.Came.UP) + " have a stand, "
                        + count(looks, StandDesk.Came.WAITING) + " show nothing yet, "
                        + count(looks, StandDesk.Came.FAILED) + " have failed");
    }

    private static long count(List<StandDesk.Look> looks, StandDesk.Came came) {
        return looks.stream().filter(look -> look.came() == came).count();
    }
}
