package rainward.feed.alert;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rainward.feed.reading.Features;
import rainward.feed.reading.Features.One;
import rainward.feed.reading.Json;
import rainward.feed.reading.Spans;
import rainward.feed.reading.Unreadable;
import rainward.weather.alert.PublicAlert;
import rainward.weather.alert.PublicAlert.Message;
import rainward.weather.alert.PublicAlert.Rank;
import rainward.weather.alert.PublicAlert.Severity;
import rainward.weather.alert.PublicAlert.Times;
import rainward.weather.source.LastGoodCopies.Copy;

/** Reads alerts of the US service. Only actual ones count; tests and exercises are passed by. */
public final class AlertFeatures {

    private AlertFeatures() {}

    public static Features.Read<PublicAlert> read(Copy copy) throws Unreadable {
        Features.Read<Optional<PublicAlert>> all =
                Features.read(copy.body(), "alerts", AlertFeatures::alert);
        List<PublicAlert> actual =
                all.items().stream().flatMap(Optional::stream).toList();
        return new Features.Read<>(actual, all.notes());
    }

    private static One<Optional<PublicAlert>> alert(JsonNode p) {
        if (!p.path("status").asText("").equals("Actual")) {
            return One.of(Optional.empty());
        }
        String id = text(p, "id");
        Optional<Instant> sent = time(p, "sent");
        Optional<PublicAlert.Type> type = type(text(p, "messageType"));
        if (id.isBlank() || sent.isEmpty() || text(p, "event").isBlank()) {
            return One.leftOut("it has no id, event or time of sending");
        }
        if (type.isEmpty()) {
            return One.leftOut("its message type is '" + Json.cut(text(p, "messageType")) + "'");
        }
        Message message = new Message(
                type.get(),
                text(p, "event"),
                text(p, "headline"),
                text(p, "instruction"),
                text(p, "areaDesc"));
        Rank rank = new Rank(severity(p), text(p, "certainty"), text(p, "urgency"));
        return One.of(
                Optional.of(new PublicAlert(id, message, rank, times(p, sent.get()), replaces(p))));
    }

    private static Times times(JsonNode p, Instant sent) {
        Instant starts = time(p, "onset").or(() -> time(p, "effective")).orElse(sent);
        Optional<Instant> ends = time(p, "ends")
                .or(() -> Spans.time(
                        p.path("parameters").path("eventEndingTime").path(0).asText("")))
                .or(() -> time(p, "expires"));
        return new Times(sent, starts, ends);
    }

    private static Set<String> replaces(JsonNode p) {
        Set<String> ids = new LinkedHashSet<>();
        for (JsonNode reference : p.path("references")) {
            ids.add(reference.path("identifier").asText(""));
        }
        // Each is sender,identifier,sent; several are parted by blanks (CAP 1.2, references).
        for (JsonNode expired : p.path("parameters").path("expiredReferences")) {
            Stream.of(expired.asText("").split("\\s+"))
                    .map(triple -> triple.split(",", -1))
                    .filter(parts -> parts.length == 3)
                    .forEach(parts -> ids.add(parts[1]));
        }
        ids.remove("");
        return ids;
    }

    private static Severity severity(JsonNode p) {
        String said = text(p, "severity").toUpperCase(Locale.ROOT);
        return Stream.of(Severity.values())
                .filter(s -> s.name().equals(said))
                .findFirst()
                .orElse(Severity.UNKNOWN);
    }

    private static Optional<PublicAlert.Type> type(String said) {
        return Stream.of(PublicAlert.Type.values())
                .filter(t -> t.name().equals(said.toUpperCase(Locale.ROOT)))
                .findFirst();
    }

    private static Optional<Instant> time(JsonNode p, String name) {
        return Spans.time(text(p, name));
    }

    private static String text(JsonNode p, String name) {
        return Json.silent(p.path(name)) ? "" : p.path(name).asText("");
    }
}
