package rainward.feed.past;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import rainward.farm.Window;
import rainward.feed.hourly.HourlyFill;
import rainward.feed.reading.Features;
import rainward.feed.reading.Json;
import rainward.feed.reading.Notes;
import rainward.feed.reading.Quantity;
import rainward.feed.reading.Spans;
import rainward.feed.reading.Unreadable;
import rainward.weather.rain.RainObservation;
import rainward.weather.source.LastGoodCopies.Copy;

/**
 * Observed rain as read from an answer. Missing hours are left out, they are not dry.
 *
 * @param rain amounts with their windows
 * @param air of a station, the newest report of each hour
 * @param notes what was left out
 */
public record RainRows(List<RainObservation> rain, List<StationAir> air, List<String> notes) {

    private static final Duration HOUR = Duration.ofHours(1);
    private static final Duration DAY = Duration.ofDays(1);

    /** How far two clocks may differ before one of them is wrong. */
    private static final Duration CLOCKS_APART = Duration.ofMinutes(5);

    public RainRows {
        rain = List.copyOf(rain);
        air = List.copyOf(air);
        notes = List.copyOf(notes);
    }

    private RainRows(List<RainObservation> rain, List<String> notes) {
        this(rain, List.of(), notes);
    }

    /** Hourly analysis in inches, stamped with the end of the hour in UTC. */
    public static RainRows stageFour(Copy copy) throws Unreadable {
        JsonNode root = Json.read(copy.body());
        if (root.path("gridi").asInt(0) < 0) {
            throw new Unreadable("has no grid at this place");
        }
        if (!root.path("data").isArray()) {
            throw new Unreadable("sent an answer without data");
        }
        Notes notes = Notes.ofEntries();
        List<RainObservation> rain = new ArrayList<>();
        for (JsonNode row : root.path("data")) {
            Optional<Instant> end = Spans.time(row.path("end_valid").asText(""));
            if (end.isEmpty()) {
                notes.leftOut("stage4", "it has no time");
            } else if (ahead(copy, end.get())) {
                notes.leftOut("stage4", "its hour is not over: " + end.get());
            } else {
                mm(row.path("precip_in"), "inch", "stage4", notes)
                        .ifPresent(mm -> rain.add(fallen(copy, "stage4", HOUR, end.get(), mm)));
            }
        }
        return new RainRows(rain, notes.all());
    }

    /** Daily analysis in millimetres; a date stands for the 24 h that end at its 12 UTC. */
    public static RainRows acis(Copy copy) throws Unreadable {
        JsonNode root = Json.read(copy.body());
        if (root.has("error")) {
            throw new Unreadable(
                    "sent an error: \"" + Json.cut(root.path("error").asText("")) + "\"");
        }
        if (!root.path("data").isArray()) {
            throw new Unreadable("sent an answer without data");
        }
        Notes notes = Notes.ofEntries();
        List<RainObservation> rain = new ArrayList<>();
        for (JsonNode row : root.path("data")) {
            Optional<Instant> end = noonOf(row.path(0).asText(""));
            if (row.path(1).asInt(0) == -999) {
                notes.leftOut("acis", "nothing is known of " + row.path(0).asText());
            } else if (end.isEmpty()) {
                notes.leftOut("acis", "'" + Json.cut(row.path(0).asText()) + "' is no date");
            } else if (ahead(copy, end.get())) {
                notes.leftOut("acis", "its day is not over: " + end.get());
            } else {
                mm(row.path(1), "mm", "acis", notes)
                        .ifPresent(mm -> rain.add(fallen(copy, "acis", DAY, end.get(), mm)));
            }
        }
        return new RainRows(rain, notes.all());
    }

    /** Reports of a station: of each clock hour the last report, and only where it has rain. */
    public static RainRows station(Copy copy) throws Unreadable {
        Notes notes = Notes.ofEntries();
        Features.Read<StationFeatures.Report> read = StationFeatures.read(copy, notes);
        Map<Instant, StationFeatures.Report> lastOfHour = new LinkedHashMap<>();
        for (StationFeatures.Report report : read.items()) {
            lastOfHour.merge(
                    HourlyFill.fullHour(report.at()),
                    report,
                    (a, b) -> b.rainLastHourMm().isPresent() && b.at().isAfter(a.at()) ? b : a);
        }
        List<RainObservation> rain = new ArrayList<>();
        for (StationFeatures.Report report : lastOfHour.values()) {
            OptionalDouble mm = report.rainLastHourMm();
            if (mm.isPresent()) {
                rain.add(fallen(copy, "station", HOUR, report.at(), mm.getAsDouble()));
            } else {
                notes.leftOut("station rain", "it is not given at " + report.at());
            }
        }
        List<String> all = new ArrayList<>(read.notes());
        all.addAll(notes.all());
        return new RainRows(rain, air(read.items()), all);
    }

    private static List<StationAir> air(List<StationFeatures.Report> reports) {
        Map<Instant, StationAir> byHour = new TreeMap<>();
        reports.stream()
                .sorted(Comparator.comparing(StationFeatures.Report::at))
                .flatMap(report -> report.air().stream())
                .forEach(air -> byHour.put(air.hour(), air));
        return List.copyOf(byHour.values());
    }

    /** What ends after the answer came has not fallen, or not all of it. */
    private static boolean ahead(Copy copy, Instant end) {
        return end.isAfter(copy.times().fetchedAt().plus(CLOCKS_APART));
    }

    private static RainObservation fallen(
            Copy copy, String source, Duration length, Instant end, double mm) {
        Window window = new Window(end.minus(length), end);
        return new RainObservation(window, mm, source, copy.times().fetchedAt());
    }

    private static OptionalDouble mm(JsonNode node, String unit, String source, Notes notes) {
        Quantity.Said said = Quantity.RAIN.read(node, unit);
        if (said.si().isEmpty()) {
            notes.leftOut(source, said.whyNot());
        }
        return said.si();
    }

    private static Optional<Instant> noonOf(String date) {
        try {
            return Optional.of(LocalDate.parse(date).atTime(12, 0).toInstant(ZoneOffset.UTC));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }
}
