package rainward.feed.past;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.feed.hourly.HourlyFill;
import rainward.feed.reading.Features;
import rainward.feed.reading.Features.One;
import rainward.feed.reading.Json;
import rainward.feed.reading.Notes;
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
    record Report(Instant at, OptionalDouble rainLastHourMm, Optional<StationAir> air) {}

    /** Reports, with what was left out of them named in the notes. */
    static Features.Read<Report> read(Copy copy, Notes notes) throws Unreadable {
        return Features.read(copy.body(), "observations", p -> report(p, notes));
    }

    private static One<Report> report(JsonNode p, Notes notes) {
        String text = p.path("timestamp").asText("");
        Optional<Instant> at = Spans.time(text);
        if (at.isEmpty()) {
            return One.leftOut("'" + Json.cut(text) + "' is not a time");
        }
        return One.of(new Report(
                at.get(),
                new Value("precipitationLastHour", Quantity.RAIN).of(p, notes),
                air(p, HourlyFill.fullHour(at.get()), notes)));
    }

    /** A part of it that is missing or above what air can hold leaves the hour out. */
    private static Optional<StationAir> air(JsonNode p, Instant hour, Notes notes) {
        OptionalDouble temp = new Value("temperature", Quantity.AIR_TEMP).of(p, notes);
        OptionalDouble dew = new Value("dewpoint", Quantity.DEW_POINT).of(p, notes);
        OptionalDouble wind = new Value("windSpeed", Quantity.WIND).of(p, notes);
        if (temp.isEmpty() || dew.isEmpty() || wind.isEmpty()) {
            return Optional.empty();
        }
        if (dew.getAsDouble() > temp.getAsDouble()) {
            notes.leftOut("station air", "its dew point lies above its temperature");
            return Optional.empty();
        }
        double wind2mMps = AirPhysics.windAt2mMps(wind.getAsDouble(), MAST_M);
        return Optional.of(new StationAir(hour, temp.getAsDouble(), dew.getAsDouble(), wind2mMps));
    }

    /** A value with its unit; what is missing is the rule here, what is bad is named. */
    private record Value(String name, Quantity quantity) {

        OptionalDouble of(JsonNode report, Notes notes) {
            JsonNode node = report.path(name);
            if (Json.silent(node.path("value"))) {
                return OptionalDouble.empty();
            }
            // MADIS: X failed a check, Q was questioned, B is on the list of bad ones.
            String check = node.path("qualityControl").asText("").replaceFirst("^qc:", "");
            Quantity.Said said =
                    quantity.read(node.path("value"), node.path("unitCode").asText(""));
            if (said.si().isEmpty() || check.matches("[XQB]")) {
                notes.leftOut(
                        "station " + name,
                        said.si().isEmpty()
                                ? said.whyNot()
                                : "it failed the service's own check (" + check + ")");
                return OptionalDouble.empty();
            }
            return said.si();
        }
    }
}
