package rainward.feed.point;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.farm.Window;
import rainward.feed.reading.Json;
import rainward.feed.reading.Moments;
import rainward.feed.reading.Notes;
import rainward.feed.reading.Quantity;
import rainward.feed.reading.Spell;
import rainward.feed.reading.Unreadable;

/** Hourly columns of Open-Meteo: one list of times, one list of values for each variable. */
final class Columns {

    private static final long HOUR = 3600;

    private final JsonNode hourly;
    private final JsonNode units;
    private final List<Optional<Instant>> times;
    private final Notes notes;

    private Columns(JsonNode root, List<Optional<Instant>> times, Notes notes) {
        this.hourly = root.path("hourly");
        this.units = root.path("hourly_units");
        this.times = times;
        this.notes = notes;
    }

    /** The columns of a document, or the error it holds. */
    static Columns of(byte[] body, Notes notes) throws Unreadable {
        JsonNode root = Json.read(body);
        if (root.path("error").asBoolean(false)) {
            throw new Unreadable(
                    "sent an error: \"" + Json.cut(root.path("reason").asText("")) + "\"");
        }
        JsonNode time = root.path("hourly").path("time");
        if (!time.isArray() || time.isEmpty()) {
            throw new Unreadable("sent a forecast without hourly times");
        }
        int offset = root.path("utc_offset_seconds").asInt(0);
        List<Optional<Instant>> times = new ArrayList<>();
        for (JsonNode node : time) {
            Optional<Instant> at = time(node, offset);
            if (at.isEmpty()) {
                notes.leftOut("time", "'" + Json.cut(node.asText()) + "' is not a time");
            }
            times.add(at);
        }
        return new Columns(root, times, notes);
    }

    /** Seconds since 1970, or local time with the document's one offset. */
    private static Optional<Instant> time(JsonNode node, int offsetSeconds) {
        try {
            if (node.isIntegralNumber()) {
                return Optional.of(Instant.ofEpochSecond(node.asLong()));
            }
            return Optional.of(LocalDateTime.parse(node.asText())
                    .toInstant(ZoneOffset.ofTotalSeconds(offsetSeconds)));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** Names of the columns that are there. */
    List<String> names() {
        List<String> names = new ArrayList<>();
        hourly.fieldNames().forEachRemaining(names::add);
        return names;
    }

    /** Values at instants, as the hours between them. */
    List<Spell> moments(String name, Quantity quantity) {
        Moments moments = new Moments();
        each(name, quantity, moments::put);
        return moments.hours();
    }

    /** Sums or chances of the hour before each time. */
    List<Spell> hoursBefore(String name, Quantity quantity) {
        List<Spell> spells = new ArrayList<>();
        each(
                name,
                quantity,
                (at, value) -> spells.add(new Spell(new Window(at.minusSeconds(HOUR), at), value)));
        return Spell.inOrder(name, spells, notes);
    }

    /** Takes a value with its time. */
    private interface Taker {
        void take(Instant at, double value);
    }

    private void each(String name, Quantity quantity, Taker taker) {
        JsonNode column = hourly.path(name);
        if (!column.isArray() || column.size() != times.size()) {
            notes.say(name
                    + (column.isArray() ? ": not as long as the times, left out" : ": not sent"));
            return;
        }
        String unit = units.path(name).asText("");
        if (!quantity.knows(unit)) {
            notes.say(name + ": unknown unit '" + Json.cut(unit) + "', left out");
            return;
        }
        for (int i = 0; i < times.size(); i++) {
            Optional<Instant> at = times.get(i);
            Quantity.Said said = quantity.read(column.path(i), unit);
            if (said.si().isEmpty()) {
                notes.leftOut(name, said.whyNot());
            } else if (at.isPresent()) {
                taker.take(at.get(), said.si().getAsDouble());
            }
        }
    }
}
