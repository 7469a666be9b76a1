package rainward.feed.past;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.farm.Window;
import rainward.feed.reading.Features;
import rainward.feed.reading.Features.One;
import rainward.feed.reading.Json;
import rainward.feed.reading.Quantity;
import rainward.feed.reading.Spans;
import rainward.feed.reading.Unreadable;
import rainward.weather.source.LastGoodCopies.Copy;

/**
 * Reads observations of a station. Rain is mostly null or absent there, and null is not dry; a unit
 * is read with every value, since it has changed from metres to millimetres over the years.
 */
final class StationFeatures {

    private StationFeatures() {}

    /**
     * What a station says of one time.
     *
     * @param at when
     * @param rainLastHourMm fallen in the hour before [mm]
     * @param airTempC at screen height [C]
     */
    record Report(Instant at, OptionalDouble rainLastHourMm, OptionalDouble airTempC) {

        Window hourBefore() {
            return new Window(at.minus(Duration.ofHours(1)), at);
        }
    }

    static Features.Read<Report> read(Copy copy) throws Unreadable {
        return Features.read(copy.body(), "observations", StationFeatures::report);
    }

    private static One<Report> report(JsonNode p) {
        String text = p.path("timestamp").asText("");
        Optional<Instant> at = Spans.time(text);
        if (at.isEmpty()) {
            return One.leftOut("'" + Json.cut(text) + "' is not a time");
        }
        return One.of(new Report(
                at.get(),
                value(p.path("precipitationLastHour"), Quantity.RAIN),
                value(p.path("temperature"), Quantity.AIR_TEMP)));
    }

    /** A value with its unit; unknown where any of it is missing, wild or failed its check. */
    private static OptionalDouble value(JsonNode node, Quantity quantity) {
        OptionalDouble number = Json.number(node.path("value"));
        var toSi = quantity.from(node.path("unitCode").asText(""));
        // MADIS: X failed a check, Q was questioned, B is on the list of bad ones.
        String check = node.path("qualityControl").asText("").replaceFirst("^qc:", "");
        if (number.isEmpty() || toSi.isEmpty() || check.matches("[XQB]")) {
            return OptionalDouble.empty();
        }
        return quantity.believable(toSi.get().applyAsDouble(number.getAsDouble()));
    }
}
