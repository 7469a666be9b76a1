package rainward.feed.recorded;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.farm.Window;
import rainward.feed.reading.Json;
import rainward.feed.reading.Notes;
import rainward.feed.reading.Spans;
import rainward.feed.reading.Unreadable;
import rainward.weather.source.LastGoodCopies.Copy;

/**
 * The US service's forecast in words, by periods. For reading only: it has no amounts, and
 * decisions rest on the raw layers.
 *
 * @param periods in the order of the document
 * @param notes what was left out
 */
record Periods(List<Period> periods, List<String> notes) {

    Periods {
        periods = List.copyOf(periods);
        notes = List.copyOf(notes);
    }

    /**
     * One period.
     *
     * @param window when
     * @param words of the forecaster
     * @param chance of rain, where it is given: null is unknown, not none [0..1]
     */
    record Period(Window window, String words, OptionalDouble chance) {}

    static Periods read(Copy copy) throws Unreadable {
        JsonNode root = Json.read(copy.body());
        JsonNode properties = root.has("properties") ? root.path("properties") : root;
        if (!properties.path("periods").isArray()) {
            throw new Unreadable("sent a forecast in words without periods");
        }
        Notes notes = Notes.ofEntries();
        List<Period> periods = new ArrayList<>();
        for (JsonNode node : properties.path("periods")) {
            Optional<Instant> from = Spans.time(node.path("startTime").asText(""));
            Optional<Instant> to = Spans.time(node.path("endTime").asText(""));
            if (from.isEmpty() || to.isEmpty() || !from.get().isBefore(to.get())) {
                String start = Json.cut(node.path("startTime").asText(""));
                notes.leftOut("periods", "'" + start + "' does not begin a stretch of time");
                continue;
            }
            periods.add(new Period(
                    new Window(from.get(), to.get()),
                    node.path("shortForecast").asText(""),
                    chance(node.path("probabilityOfPrecipitation"))));
        }
        return new Periods(periods, notes.all());
    }

    private static OptionalDouble chance(JsonNode node) {
        OptionalDouble number = Json.number(node.isObject() ? node.path("value") : node);
        return number.isPresent() && number.getAsDouble() >= 0 && number.getAsDouble() <= 100
                ? OptionalDouble.of(number.getAsDouble() / 100)
                : OptionalDouble.empty();
    }
}
