package rainward.daemon.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import rainward.brief.post.Outgoing;
import rainward.cycle.Cycle;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.PostDesk;
import rainward.daemon.office.SurveyDesk;
import rainward.daemon.office.WeatherDesk;
import rainward.daemon.service.Rounds;
import rainward.daemon.settings.Settings;
import rainward.feed.terms.Pacing;
import rainward.weather.source.ForecastSeries;

/**
 * A week of the service on an accelerated clock, against a local server that plays recorded answers
 * with faults thrown in: a pull every hour, rounds as the schedule has them, and a closing list of
 * what each day's plan was made from.
 */
public final class FaultWeek {

    private static final LocalDate MONDAY = LocalDate.of(2026, 7, 13);
    private static final int DAYS = 7;
    private static final int BRIEF_HOUR = 5;
    private static final int ROUND_EVERY_HOURS = 11;

    private final Office office;
    private final DemoClock clock;
    private final DemoServer server;
    private final WeatherDesk weather;
    private final Rounds rounds;
    private final Heard heard = new Heard();

    private FaultWeek(Office office, DemoClock clock, DemoServer server) throws IOException {
        this.office = office;
        this.clock = clock;
        this.server = server;
        this.weather = new WeatherDesk(office, new Pacing(1, wait -> {}));
        MailFolder mail = new MailFolder(office.home().path().resolve("demo-mail"));
        this.rounds = new Rounds(
                office, weather, new PostDesk(office, Map.of(Outgoing.Channel.MAIL, mail)));
        rounds.tell(heard);
    }

    /** Keeps what the last round came to. */
    private static final class Heard implements Rounds.Hearer {

        private Optional<Cycle.Result> last = Optional.empty();

        @Override
        public void begins() {
            last = Optional.empty();
        }

        @Override
        public void reckoned(Cycle.Result result) {
            last = Optional.of(result);
        }
    }

    /**
     * The closing list.
     *
     * @param days in order
     * @param pulls how often all properties were asked for
     * @param without how often a property had no forecast at all
     * @param requests all questions asked of the server
     */
    public record Report(List<Day> days, int pulls, int without, int requests) {
        public Report {
            days = List.copyOf(days);
        }

        /** True where every day had a plan and every property a forecast. */
        public boolean held() {
            return without == 0 && days.stream().allMatch(day -> day.planItems() > 0);
        }
    }

    /**
     * What the plan of a day was made from, as of its brief, and what the day before brought.
     *
     * @param day of the brief
     * @param sources by property: whose forecast the plan was made from
     * @param forecastAgeH oldest of them at that moment, from its time of issue [h]
     * @param observedRain what the rain of the day before rests on, in words
     * @param planItems pieces of work in the order
     * @param told what the brief says of services in trouble
     * @param faults that services had since the last brief, by service and kind
     * @param requests made since the last brief, by service
     */
    public record Day(
            LocalDate day,
            Map<String, String> sources,
            double forecastAgeH,
            List<String> observedRain,
            int planItems,
            List<String> told,
            Map<String, Integer> faults,
            Map<String, Integer> requests) {}

    /** Runs the week in a data folder of its own. */
    public static Report run(Path folder, long seed) throws IOException {
        DemoClock clock = new DemoClock(Instant.EPOCH);
        HomeFolder home = new HomeFolder(folder).made();
        String crew = new String(
                        DemoFiles.bytes("/config/demo.toml"),
                        java.nio.charset.StandardCharsets.UTF_8)
                .replace(
                        "[crew]",
                        "traces = 20\nanswer_within = \"1 s\"\ncall_within = \"2 s\"\n\n[crew]");
        Files.writeString(home.settings(), crew + "\n[order]\nthinking = \"0.05 s\"\n");
        Settings settings = Office.settings(home.settings(), Map.of()).settings();
        Instant start =
                MONDAY.atTime(BRIEF_HOUR, 0).atZone(settings.farm().zone()).toInstant();
        try (DemoServer server = DemoServer.start(clock, new FaultSchedule(start, seed))) {
            clock.setTo(start);
            try (Office office = Office.open(home, at(server, settings), clock)) {
                return new FaultWeek(office, clock, server).through(start);
            }
        }
    }

    private static Settings at(DemoServer server, Settings settings) {
        return settings.with(settings.weather()
                .by(Settings.Way.to(Map.of(
                        Settings.Server.NWS, server.address(),
                        Settings.Server.MET_NORWAY, server.address(),
                        Settings.Server.ACIS, server.address()))));
    }

    private Report through(Instant start) throws IOException {
        takeFieldsIn();
        List<Day> days = new ArrayList<>();
        int pulls = 0;
        int without = 0;
        int requests = 0;
        for (int hour = 0; hour < DAYS * 24; hour++) {
            clock.setTo(start.plus(Duration.ofHours(hour)));
            if (hour % 24 == 0) {
                days.add(morning());
                requests += days.get(days.size() - 1).requests().values().stream()
                        .mapToInt(Integer::intValue)
                        .sum();
            } else if (hour % ROUND_EVERY_HOURS == 0) {
                rounds.turn();
            } else {
                weather.pullAll();
                weather.pullAlerts();
            }
            pulls++;
            without += office.properties().size() - weather.inHand().size();
        }
        requests += server.tally().asked().values().stream()
                .mapToInt(Integer::intValue)
                .sum();
        return new Report(days, pulls, without, requests);
    }

    private void takeFieldsIn() throws IOException {
        Path file = Files.createTempFile("week-fields", ".geojson");
        try {
            Files.write(file, DemoFiles.bytes("/config/demo-fields.geojson"));
            new SurveyDesk(office).take(file);
        } finally {
            Files.deleteIfExists(file);
        }
    }

    private Day morning() {
        rounds.brief();
        Instant now = office.now();
        Map<String, ForecastSeries> hand = weather.inHand();
        Map<String, String> sources = new TreeMap<>();
        hand.forEach((property, series) -> sources.put(property, series.stamp().source()));
        double ageH = hand.values().stream()
                .mapToDouble(s -> Duration.between(s.stamp().issuedAt(), now).toMinutes() / 60.0)
                .max()
                .orElse(Double.NaN);
        Optional<Cycle.Result> result = heard.last;
        return new Day(
                LocalDate.ofInstant(now, office.zone()),
                sources,
                Math.round(10 * ageH) / 10.0,
                result.map(r -> observed(r, now)).orElse(List.of()),
                result.map(r -> r.outlook().plan().items().size()).orElse(0),
                weather.words().stream().filter(w -> w.contains(" since ")).toList(),
                server.tally().faults(),
                server.tally().asked());
    }

    /** What yesterday's rain rests on, each way once. */
    private List<String> observed(Cycle.Result result, Instant now) {
        LocalDate yesterday = LocalDate.ofInstant(now, office.zone()).minusDays(1);
        TreeSet<String> origins = new TreeSet<>();
        result.outlook()
                .fallen()
                .forEach((property, days) -> days.stream()
                        .filter(day -> day.day().equals(yesterday))
                        .flatMap(day -> day.shares().stream())
                        .map(share -> share.from().origin().words())
                        .forEach(origins::add));
        return List.copyOf(origins);
    }

    /** Which property's forecast came from where, each source once. */
    public static String words(Map<String, String> sources) {
        Map<String, List<String>> properties = new TreeMap<>();
        sources.forEach((property, source) ->
                properties.computeIfAbsent(source, s -> new ArrayList<>()).add(property));
        Optional<String> only = properties.size() == 1
                ? Optional.of(properties.keySet().iterator().next())
                : Optional.empty();
        return only.orElseGet(() -> properties.entrySet().stream()
                .map(e -> e.getKey() + " (" + e.getValue().size() + ")")
                .reduce((a, b) -> a + ", " + b)
                .orElse("none"));
    }
}
