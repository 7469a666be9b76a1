package rainward.daemon.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.Year;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import rainward.brief.post.OutboxRow;
import rainward.daemon.settings.Settings;
import rainward.farm.Property;
import rainward.feed.past.ObservedRain;
import rainward.feed.terms.Pacing;
import rainward.mail.Delivery;
import rainward.mail.SmtpCourier;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.PullOutcome;
import rainward.weather.source.SourceStatus;

/** Where everything that the service leans on is looked at; nothing is sent or changed. */
public final class CheckDesk {

    private static final long LEAST_FREE_MB = 200;
    private static final Year FIRST_SANE = Year.of(2025);
    private static final Year LAST_SANE = Year.of(2100);
    private static final Duration OLD_FORECAST = Duration.ofHours(12);
    private static final Duration RECENT = Duration.ofDays(2);
    private static final DateTimeFormatter WHEN =
            DateTimeFormatter.ofPattern("EEE d MMM yyyy HH:mm", Locale.US);

    private final Office office;
    private final WeatherDesk weather;
    private final Instant now;

    public CheckDesk(Office office) {
        this.office = office;
        this.weather = new WeatherDesk(office);
        this.now = office.now();
    }

    /**
     * What a look at one thing gave.
     *
     * @param what was looked at
     * @param ok nothing is to be done about it
     * @param words how it stands, or what to do
     */
    public record Finding(String what, boolean ok, String words) {}

    /** Looks at the folder before anything in it is opened. */
    public static Finding folder(HomeFolder home) {
        Path path = home.path();
        try {
            long freeMb = Files.getFileStore(path).getUsableSpace() >> 20;
            if (freeMb < LEAST_FREE_MB) {
                return new Finding(
                        "data folder",
                        false,
                        path + " has only " + freeMb + " MB left: free at least " + LEAST_FREE_MB
                                + " MB on that disk.");
            }
            Path probe = Files.createTempFile(path, "check", ".tmp");
            Files.delete(probe);
            return new Finding("data folder", true, path + ", " + freeMb + " MB free");
        } catch (IOException e) {
            return new Finding(
                    "data folder",
                    false,
                    path + " cannot be written (" + e.getMessage() + "): give the user that runs"
                            + " the service the right to write there, or choose another with"
                            + " --home.");
        }
    }

    /** Looks at everything else, one after the other. */
    public List<Finding> all() {
        return List.of(
                database(),
                clock(),
                fields(),
                forecast(),
                sources(),
                network(),
                ground(),
                observed(),
                mail(),
                schedule(),
                outbox());
    }

    private Finding database() {
        String said = office.store().soundness();
        return said.equals("ok")
                ? new Finding("database", true, "sound")
                : new Finding(
                        "database",
                        false,
                        "is damaged (" + said + "): stop the service and put the last backup"
                                + " back.");
    }

    private Finding clock() {
        String shown = WHEN.format(now.atZone(office.zone())) + " " + office.zone();
        Year year = Year.from(now.atZone(office.zone()));
        Optional<Instant> ahead = newest().filter(at -> at.isAfter(now.plusSeconds(3600)));
        if (year.isBefore(FIRST_SANE) || year.isAfter(LAST_SANE)) {
            return new Finding(
                    "clock", false, "shows " + shown + ": set the clock of this machine.");
        }
        return ahead.map(at -> new Finding(
                        "clock",
                        false,
                        "shows " + shown + ", but the forecast in hand was issued "
                                + WHEN.format(at.atZone(office.zone()))
                                + ": set the clock of this machine."))
                .orElse(new Finding("clock", true, shown));
    }

    private Optional<Instant> newest() {
        return office.properties().stream()
                .flatMap(p -> office.store().read(b -> WeatherDesk.forecast(b, p)).stream())
                .map(forecast -> forecast.stamp().issuedAt())
                .max(Instant::compareTo);
    }

    private Finding fields() {
        int fields = office.store().read(books -> books.fields().all().size());
        return fields == 0
                ? new Finding(
                        "fields", false, "there are none: import some with `rainward import FILE`.")
                : new Finding(
                        "fields",
                        true,
                        fields + " on " + office.properties().size() + " properties");
    }

    private Finding forecast() {
        return weather.tryOne()
                .map(this::forecast)
                .orElse(new Finding(
                        "forecast", false, "there is no place to ask for: import fields first."));
    }

    private Finding forecast(WeatherDesk.PropertyPull pulled) {
        PullOutcome outcome = pulled.pull().outcome();
        String hand = outcome.series().map(this::inHand).orElse("none in hand");
        if (outcome instanceof PullOutcome.Failed failed) {
            return new Finding("forecast", false, failed.words() + " (" + hand + ")");
        }
        boolean old = outcome.series()
                .map(series -> age(series).compareTo(OLD_FORECAST) > 0)
                .orElse(true);
        return new Finding(
                "forecast",
                !old,
                pulled.property() + ": " + hand
                        + (old ? ": the service is behind; add another to weather.sources." : ""));
    }

    /** Which source failed and since when, this look included. */
    private Finding sources() {
        List<String> strangers = office.settings().weather().sources().own().keySet().stream()
                .filter(name -> !office.properties().contains(name))
                .toList();
        if (!strangers.isEmpty()) {
            return new Finding(
                    "sources",
                    false,
                    "weather.property names " + String.join(", ", strangers)
                            + ", which is no property: known are "
                            + String.join(", ", office.properties()) + ".");
        }
        List<SourceStatus> states = weather.sources();
        String words = states.isEmpty()
                ? "none was asked yet"
                : states.stream()
                        .map(status -> LocalWords.of(status, office.dayClock()))
                        .collect(Collectors.joining("; "));
        return new Finding(
                "sources",
                states.stream().allMatch(s -> s.state() == SourceStatus.State.OK),
                words);
    }

    /** Proposals wait for a person; nothing else waits for them. */
    private Finding ground() {
        List<GroundDesk.Line> lines = new GroundDesk(office).all();
        long open = lines.stream()
                .flatMap(line -> line.survey().stream())
                .filter(survey -> survey.state() == GroundDesk.State.PROPOSED)
                .count();
        long asked = lines.stream().filter(line -> line.survey().isPresent()).count();
        return new Finding(
                "soil survey",
                open == 0,
                asked + " of " + lines.size() + " fields fetched"
                        + (open == 0
                                ? ""
                                : "; " + open + " wait for you: see `rainward survey`, then"
                                        + " --take or --leave."));
    }

    private Finding network() {
        Settings.Way way = office.settings().weather().way();
        String proxy = way.proxy()
                .map(name -> "through the proxy " + name)
                .orElse("straight, or by the proxy that this machine is set to");
        String trusted = way.authority()
                .map(file -> FeedDoor.gateway(way).authorities().stream()
                        .map(known -> known.getSubjectX500Principal().getName() + ", good until "
                                + DateTimeFormatter.ISO_LOCAL_DATE.format(
                                        known.getNotAfter().toInstant().atZone(office.zone())))
                        .collect(Collectors.joining("; ", "; trusts besides: ", "")))
                .orElse("");
        boolean expired = FeedDoor.gateway(way).authorities().stream()
                .anyMatch(known -> known.getNotAfter().toInstant().isBefore(now));
        return new Finding(
                "network",
                !expired,
                proxy
                        + trusted
                        + (expired ? ": it has run out, ask for a new authority_file." : ""));
    }

    private Duration age(ForecastSeries series) {
        return Duration.between(series.stamp().issuedAt(), now);
    }

    private String inHand(ForecastSeries series) {
        return series.stamp().source() + ", issued "
                + WHEN.format(series.stamp().issuedAt().atZone(office.zone())) + ", "
                + age(series).toHours() + " h old";
    }

    private Finding observed() {
        List<Settings.Observed> asked = office.settings().weather().observed();
        Optional<Property> property =
                office.roster().properties().values().stream().findFirst();
        if (asked.isEmpty()) {
            return new Finding(
                    "observed rain", true, "nobody is asked; gauges are read with `rainward rain`");
        }
        if (property.isEmpty()) {
            return new Finding(
                    "observed rain", false, "there is no place to ask for: import fields first.");
        }
        List<String> came = new ArrayList<>();
        List<String> trouble = new ArrayList<>();
        for (Settings.Observed service : asked) {
            ObservedRain.Fallen fallen = ask(service, property.get());
            String name = service.name().toLowerCase(Locale.ROOT);
            if (fallen.rain().isEmpty()) {
                trouble.add(name + " told nothing: " + String.join("; ", fallen.notes()));
            } else {
                came.add(name + " told of " + fallen.rain().size() + " times");
            }
        }
        return trouble.isEmpty()
                ? new Finding("observed rain", true, String.join("; ", came))
                : new Finding(
                        "observed rain",
                        false,
                        String.join("; ", trouble) + ": until it answers, write gauges down with"
                                + " `rainward rain`.");
    }

    private ObservedRain.Fallen ask(Settings.Observed service, Property property) {
        ObservedRain rain = new ObservedRain(FeedDoor.client(
                office, Pacing.real(office.home().path().toString().hashCode())));
        LocalDate today = LocalDate.ofInstant(now, ZoneOffset.UTC);
        return switch (service) {
            case STAGE4 -> rain.hourly(property.place(), today.minusDays(1), now);
            case ACIS ->
                rain.daily(property.place(), new ObservedRain.Days(today.minusDays(3), today), now);
        };
    }

    private Finding mail() {
        Settings.Post post = office.settings().mail();
        if (post.server().isEmpty()) {
            return new Finding(
                    "mail", false, "there is no way out: add host and from under [mail].");
        }
        if (post.recipients().isEmpty()) {
            return new Finding("mail", false, "nobody gets the brief: add a [[recipient]].");
        }
        Settings.MailServer server = post.server().get();
        String where = server.host() + ":" + server.port();
        Delivery delivery = new SmtpCourier(PostDesk.smtp(office, server)).probe();
        if (delivery instanceof Delivery.Accepted) {
            String how = (server.login().isPresent() ? ", logged in" : ", no login")
                    + switch (server.security()) {
                        case STARTTLS -> ", STARTTLS";
                        case TLS -> ", TLS";
                        case NONE -> ", not encrypted";
                    };
            return new Finding("mail", true, where + how + ", nothing sent");
        }
        return new Finding(
                "mail",
                false,
                delivery.said() + ": check host, port, security and login under [mail] (now "
                        + where + ").");
    }

    private Finding schedule() {
        Path file = office.home().schedule();
        if (!Files.exists(file)) {
            return new Finding("schedule", true, "made when the service first starts");
        }
        try (Connection connection =
                        DriverManager.getConnection("jdbc:sqlite:" + file.toAbsolutePath());
                Statement statement = connection.createStatement();
                ResultSet said = statement.executeQuery("pragma quick_check(1)")) {
            String words = said.next() ? said.getString(1) : "no answer";
            if (words.equals("ok")) {
                return new Finding("schedule", true, file.getFileName() + " is sound");
            }
            return badSchedule(file, words);
        } catch (SQLException e) {
            return badSchedule(file, String.valueOf(e.getMessage()));
        }
    }

    private static Finding badSchedule(Path file, String words) {
        return new Finding(
                "schedule",
                false,
                file + " is damaged (" + words + "): stop the service and move the file away; it"
                        + " is made anew.");
    }

    private Finding outbox() {
        List<OutboxRow> recent =
                office.store().read(books -> books.outbox().since(now.minus(RECENT)));
        long lost = recent.stream()
                .filter(row -> row.progress().state() == OutboxRow.State.REFUSED
                        || row.progress().state() == OutboxRow.State.GIVEN_UP)
                .count();
        List<OutboxRow> waiting =
                office.store().read(books -> books.outbox().in(OutboxRow.State.WAITING));
        boolean stuck = waiting.stream()
                .anyMatch(row -> row.message().times().sendFrom().isBefore(now.minusSeconds(3600)));
        String words = waiting.size() + " waiting, " + lost + " refused or given up in two days";
        return new Finding(
                "outbox",
                lost == 0 && !stuck,
                lost == 0 && !stuck ? words : words + ": see `rainward outbox`.");
    }
}
