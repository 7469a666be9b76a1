package rainward.feed.past;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.farm.Window;
import rainward.feed.hourly.HourlyFill;
import rainward.feed.reading.Features;
import rainward.feed.reading.Features.One;
import rainward.feed.reading.Json;
import rainward.feed.reading.Quantity;
import rainward.feed.reading.Spans;
import rainward.feed.reading.Unreadable;
import rainward.weather.sky.AirPhysics;
import rainward.weather.source.LastGoodCopies.Copy;

/**
 * Reads observations of a station. Rain is mostly null or absent there, and null is not dry; a unit
 * is read with every value, since it has changed from metres to millimetres over the years.
 */
final class StationFeatures {

    /** Height at which stations measure wind [m]. */
    private static final double MAST_M = 10;

    private StationFeatures() {}

    /**
     * What a station says of one time.
     *
     * @param at when
     * @param rainLastHourMm fallen in the hour before [mm]
     * @param air of the hour that holds it, where all of it is given
     */
    record Report(Instant at, OptionalDouble rainLastHourMm, Optional<StationAir> air) {

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
                air(p, HourlyFill.fullHour(at.get()))));
    }

    /** A part of it that is missing or above what air can hold leaves the hour out. */
    private static Optional<StationAir> air(JsonNode p, Instant hour) {
        OptionalDouble temp = value(p.path("temperature"), Quantity.AIR_TEMP);
        OptionalDouble dew = value(p.path("dewpoint"), Quantity.DEW_POINT);
        OptionalDouble wind = value(p.path("windSpeed"), Quantity.WIND);
        boolean whole = temp.isPresent() && dew.isPresent() && wind.isPresent();
        if (!whole || dew.getAsDouble() > temp.getAsDouble()) {
            return Optional.empty();
        }
        double wind2mMps = AirPhysics.windAt2mMps(wind.getAsDouble(), MAST_M);
        return Optional.of(new StationAir(hour, temp.getAsDouble(), dew.getAsDouble(), wind2mMps));
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
