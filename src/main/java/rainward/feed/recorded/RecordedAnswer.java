package rainward.feed.recorded;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import okhttp3.OkHttpClient;
import rainward.farm.GeoPoint;
import rainward.feed.alert.AlertFeed;
import rainward.feed.nws.GridCell;
import rainward.feed.nws.NationalWeatherService;
import rainward.feed.past.RainRows;
import rainward.feed.point.MetNorway;
import rainward.feed.point.OpenMeteo;
import rainward.feed.reading.Spans;
import rainward.feed.terms.Addresses;
import rainward.feed.terms.FeedSettings;
import rainward.feed.terms.Gateway;
import rainward.feed.terms.MemoryCopies;
import rainward.feed.terms.MemoryPauses;
import rainward.feed.terms.Pacing;
import rainward.feed.terms.Service;
import rainward.feed.wire.Answer;
import rainward.feed.wire.Answer.Given;
import rainward.feed.wire.Answer.Refused;
import rainward.feed.wire.Ask;
import rainward.feed.wire.PoliteClient;
import rainward.feed.wire.Round;
import rainward.feed.wire.Wire;
import rainward.weather.source.PullOutcome;
import rainward.weather.source.PullOutcome.Failed;

/** Serves one recorded response at a time and sees what the client for it makes of it. */
public final class RecordedAnswer implements AutoCloseable {

    private static final GeoPoint PLACE = new GeoPoint(42.1, -84.2);
    private static final String POINT = "/points/42.1,-84.2";
    private static final String CELL = "/gridpoints/XXX/1,1";
    private static final Instant ANY_TIME = Instant.parse("2026-07-15T12:00:00Z");

    private final LoopbackServer server;
    private final OkHttpClient base = new OkHttpClient();
    private final FeedSettings settings;

    RecordedAnswer() throws IOException {
        server = new LoopbackServer();
        FeedSettings all = new FeedSettings(
                new FeedSettings.Identity("Rainward", "verify@localhost"),
                Map.of(),
                new FeedSettings.Pace(
                        FeedSettings.Pace.USUAL.connect(),
                        FeedSettings.Pace.USUAL.read(),
                        FeedSettings.Pace.USUAL.call(),
                        1,
                        2,
                        false),
                Optional.of(new FeedSettings.OpenMeteoTerms(Optional.empty(), Optional.of("any"))),
                Gateway.NONE);
        for (Service service : Service.values()) {
            all = all.at(service, server.address());
        }
        settings = all;
    }

    /**
     * What came of one file.
     *
     * @param isResponse false for a file that no client of ours asks for
     * @param asExpected true where it came out as it should
     * @param says what there is to tell
     */
    record Verdict(boolean isResponse, boolean asExpected, List<String> says) {

        Verdict {
            says = List.copyOf(says);
        }

        static Verdict good(List<String> notes) {
            return new Verdict(true, true, notes);
        }

        static Verdict bad(String what) {
            return new Verdict(true, false, List.of("not as expected: " + what));
        }

        static Verdict foreign(String what) {
            return new Verdict(false, true, List.of("not counted: " + what));
        }

        /** Notes, and what a plain reading says otherwise. */
        static Verdict of(List<String> notes, List<String> losses) {
            List<String> says = new ArrayList<>(notes);
            losses.forEach(loss -> says.add("not as expected: " + loss));
            return new Verdict(true, losses.isEmpty(), says);
        }
    }

    Verdict check(String source, Recording recording) {
        server.clear();
        return switch (source) {
            case "nws" -> nws(recording);
            case "met-norway" -> metNorway(recording);
            default -> openMeteo(recording);
        };
    }

    private PoliteClient client() {
        return new PoliteClient(
                base,
                settings,
                new PoliteClient.Memory(new MemoryCopies(), new MemoryPauses()),
                new Pacing(1, wait -> {}));
    }

    private Verdict nws(Recording recording) {
        JsonNode root = recording.root();
        JsonNode p = root.has("properties") ? root.path("properties") : root;
        if (recording.isError() || root.isMissingNode()) {
            return error(recording);
        }
        if (p.path("periods").isArray()) {
            return words(recording, p);
        }
        if (p.path("temperature").has("values") || p.path("validTimes").isTextual()) {
            return grid(recording, p);
        }
        if (p.has("gridId")) {
            return point(recording, p);
        }
        return list(recording);
    }

    /** What is no data has to come out as a failure with words. */
    private Verdict error(Recording recording) {
        server.put(POINT, cellAnswer("XXX", "1", "1"));
        server.put(CELL, recording.reply());
        return failure(
                new NationalWeatherService(client()).pull(PLACE, ANY_TIME).outcome());
    }

    private static Verdict failure(PullOutcome outcome) {
        return outcome instanceof Failed failed
                ? Verdict.good(List.of("error: " + failed.words()))
                : Verdict.bad("an error was taken for data");
    }

    private static Wire.Reply cellAnswer(String office, String x, String y) {
        String body = "{\"properties\":{\"gridId\":\"" + office + "\",\"gridX\":" + x
                + ",\"gridY\":" + y + "}}";
        return new Wire.Reply(
                200,
                Map.of("content-type", "application/geo+json"),
                body.getBytes(java.nio.charset.StandardCharsets.UTF_8));
    }

    private Verdict grid(Recording recording, JsonNode p) {
        String office = p.path("gridId").asText("XXX");
        String x = p.path("gridX").asText("1");
        String y = p.path("gridY").asText("1");
        server.put(POINT, cellAnswer(office, x, y));
        server.put("/gridpoints/" + office + "/" + x + "," + y, recording.reply());
        PlainGrid plain = PlainGrid.of(p);
        Instant asOf = plain.start().orElse(ANY_TIME);
        var pull = new NationalWeatherService(client()).pull(PLACE, asOf);
        if (pull.outcome() instanceof Failed failed) {
            return Verdict.bad(failed.words());
        }
        var series = pull.outcome().series().orElseThrow();
        List<String> notes = series.warnings().stream()
                .filter(w -> !w.contains("farm's place"))
                .toList();
        return Verdict.of(notes, plain.losses(series));
    }

    private Verdict words(Recording recording, JsonNode p) {
        Answer<Periods> answer = asked(recording, CELL + "/forecast", Periods::read);
        if (answer instanceof Given<Periods> given) {
            Periods read = given.value();
            boolean all = read.periods().size() == p.path("periods").size();
            return all || !read.notes().isEmpty()
                    ? Verdict.good(read.notes())
                    : Verdict.bad("periods were lost");
        }
        return Verdict.bad(((Refused<?>) answer).why().words());
    }

    private Verdict point(Recording recording, JsonNode p) {
        Answer<Optional<GridCell>> answer = asked(recording, POINT, GridCell::read);
        if (answer instanceof Given<Optional<GridCell>> given) {
            String path = given.value().map(GridCell::path).orElse("none");
            String said = p.path("gridId").isNull()
                    ? "none"
                    : "gridpoints/" + p.path("gridId").asText() + "/"
                            + p.path("gridX").asText() + "," + p.path("gridY").asText();
            return path.equals(said)
                    ? Verdict.good(List.of())
                    : Verdict.bad("cell read as " + path + ", is " + said);
        }
        return Verdict.bad(((Refused<?>) answer).why().words());
    }

    private Verdict list(Recording recording) {
        JsonNode features = recording.root().path("features");
        JsonNode first = features.path(0).path("properties");
        if (recording.file().contains("alert") || first.has("messageType")) {
            return alerts(recording);
        }
        if (recording.file().contains("observation") || first.has("precipitationLastHour")) {
            Answer<RainRows> answer =
                    asked(recording, "/stations/K/observations", RainRows::station);
            return answer instanceof Given<RainRows> given
                    ? Verdict.good(given.value().notes())
                    : Verdict.bad(((Refused<?>) answer).why().words());
        }
        return Verdict.foreign("no client asks for this kind of response");
    }

    private Verdict alerts(Recording recording) {
        server.put("/alerts/active", recording.reply());
        AlertFeed.Poll poll = new AlertFeed(client()).pull(PLACE, ANY_TIME);
        if (poll.alerts().isEmpty()) {
            return Verdict.bad(String.join("; ", poll.notes()));
        }
        long actual = 0;
        for (JsonNode feature : recording.root().path("features")) {
            boolean counts = feature.path("properties").path("status").asText().equals("Actual");
            actual += counts ? 1 : 0;
        }
        int read = poll.alerts().get().size();
        return read == actual || !poll.notes().isEmpty()
                ? Verdict.good(poll.notes())
                : Verdict.bad(read + " alerts read of " + actual);
    }

    private <T> Answer<T> asked(Recording recording, String path, PoliteClient.Reader<T> reader) {
        server.put(path, recording.reply());
        var url = Addresses.under(server.address(), path.substring(1)).build();
        Ask ask = Ask.get(Service.NWS, url, "application/geo+json");
        return client().ask(ask, new Round(ANY_TIME), reader);
    }

    private Verdict metNorway(Recording recording) {
        server.put("/weatherapi/locationforecast/2.0/complete", recording.reply());
        JsonNode steps = recording.root().path("properties").path("timeseries");
        Instant asOf = Spans.time(steps.path(0).path("time").asText("")).orElse(ANY_TIME);
        PullOutcome outcome = new MetNorway(client()).pull(PLACE, asOf).outcome();
        boolean data = !recording.isError() && steps.isArray();
        if (outcome instanceof Failed failed) {
            return data ? Verdict.bad(failed.words()) : failure(outcome);
        }
        var series = outcome.series().orElseThrow();
        return Verdict.of(series.warnings(), PlainSums.metNorway(steps, series));
    }

    private Verdict openMeteo(Recording recording) {
        if (recording.root().isArray()) {
            List<String> says = new ArrayList<>();
            boolean good = true;
            for (JsonNode part : recording.root()) {
                Verdict verdict = openMeteo(recording.with(part));
                says.addAll(verdict.says());
                good &= verdict.asExpected();
            }
            return new Verdict(true, good, says);
        }
        JsonNode hourly = recording.root().path("hourly");
        boolean error = recording.isError() || recording.root().isMissingNode();
        if (!error && !hourly.isObject()) {
            return Verdict.foreign("it holds no hourly values, which are what is asked for");
        }
        boolean members = PlainSums.members(hourly) > 1;
        server.put(members ? "/v1/ensemble" : "/v1/forecast", recording.reply());
        Instant asOf = PlainSums.firstTime(recording.root()).orElse(ANY_TIME);
        OpenMeteo client = new OpenMeteo(client());
        if (members) {
            return client.members(PLACE, asOf)
                    .rain()
                    .map(rain -> Verdict.of(rain.warnings(), PlainSums.ensemble(hourly, rain)))
                    .orElseGet(() -> Verdict.bad("no ensemble could be read"));
        }
        PullOutcome outcome = client.pull(PLACE, asOf).outcome();
        if (outcome instanceof Failed failed) {
            return error ? failure(outcome) : Verdict.bad(failed.words());
        }
        var series = outcome.series().orElseThrow();
        return Verdict.of(series.warnings(), PlainSums.openMeteo(recording.root(), series));
    }

    @Override
    public void close() {
        server.close();
    }
}
