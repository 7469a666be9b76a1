package rainward.feed.nws;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.algorithm.PointLocation;
import org.locationtech.jts.geom.Coordinate;
import rainward.farm.GeoPoint;
import rainward.farm.Window;
import rainward.feed.hourly.AirLayers;
import rainward.feed.hourly.RainLayers;
import rainward.feed.hourly.ReadForecast;
import rainward.feed.reading.Json;
import rainward.feed.reading.Notes;
import rainward.feed.reading.Quantity;
import rainward.feed.reading.Spans;
import rainward.feed.reading.Spell;
import rainward.feed.reading.Unreadable;
import rainward.feed.terms.Service;
import rainward.feed.wire.RetryAfter;
import rainward.feed.wire.Round;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.LastGoodCopies.Copy;

/**
 * Raw layers of one grid cell of the US service. Layers are joined on time, never on index: each
 * has intervals of its own. An interval or layer that cannot be read is named and left out.
 *
 * @param forecast layers, and when the office last issued them
 * @param cell corners of the cell, closed; empty where not given
 */
public record GridForecast(ReadForecast forecast, List<Coordinate> cell) {

    /** Reads an answer in GeoJSON or in the flat linked form. */
    public static GridForecast read(Copy copy) throws Unreadable {
        JsonNode root = Json.read(copy.body());
        JsonNode properties = root.has("properties") ? root.path("properties") : root;
        Notes notes = new Notes();
        Layers layers = new Layers(properties, copy.times().fetchedAt(), notes);
        AirLayers air = new AirLayers(
                layers.read("temperature", Quantity.AIR_TEMP),
                layers.read("dewpoint", Quantity.DEW_POINT),
                layers.read("relativeHumidity", Quantity.SHARE),
                layers.read("windSpeed", Quantity.WIND),
                layers.read("skyCover", Quantity.SHARE));
        if (air.airTempC().isEmpty()) {
            throw new Unreadable("sent a forecast without a readable temperature"
                    + notes.all().stream().findFirst().map(n -> " (" + n + ")").orElse(""));
        }
        RainLayers rain = new RainLayers(
                layers.read("quantitativePrecipitation", Quantity.RAIN),
                layers.read("probabilityOfPrecipitation", Quantity.SHARE));
        Instant issuedAt = issuedAt(properties, copy, notes);
        return new GridForecast(new ReadForecast(issuedAt, air, rain, notes.all()), cell(root));
    }

    Instant issuedAt() {
        return forecast.issuedAt();
    }

    /** The series from the present on; empty where it does not cover the coming hours. */
    public Optional<ForecastSeries> series(GeoPoint asked, Round round, Instant pulledAt) {
        List<String> before = new ArrayList<>(round.notes());
        if (!cell.isEmpty() && !holds(asked)) {
            before.add("the grid cell does not hold the farm's place");
        }
        var place = new ReadForecast.Place(Service.NWS, centre().orElse(asked), round.asOf());
        return forecast.series(place, pulledAt, before);
    }

    /** True where it was issued within 24 h and reaches another 24 h ahead. */
    boolean current(Instant asOf) {
        return !issuedAt().isBefore(asOf.minus(Duration.ofHours(24)))
                && !forecast.end().isBefore(asOf.plus(Duration.ofHours(24)));
    }

    /** True where the cell is known and a place lies in it. */
    public boolean holds(GeoPoint point) {
        return !cell.isEmpty()
                && PointLocation.isInRing(
                        new Coordinate(point.longitudeDeg(), point.latitudeDeg()),
                        cell.toArray(new Coordinate[0]));
    }

    /** Middle of the cell: all fields in one cell share it. */
    private Optional<GeoPoint> centre() {
        if (cell.size() < 4) {
            return Optional.empty();
        }
        List<Coordinate> corners = cell.subList(0, cell.size() - 1);
        double lat = corners.stream().mapToDouble(c -> c.y).average().orElseThrow();
        double lon = corners.stream().mapToDouble(c -> c.x).average().orElseThrow();
        return Optional.of(new GeoPoint(lat, lon));
    }

    private static Instant issuedAt(JsonNode properties, Copy copy, Notes notes) {
        Optional<Instant> said = Spans.time(properties.path("updateTime").asText(""));
        if (said.isPresent()) {
            return said.get();
        }
        notes.say("updateTime: not readable, the time of the answer stands in for it");
        Instant fetched = copy.times().fetchedAt();
        return Optional.ofNullable(copy.headers().get("last-modified"))
                .flatMap(RetryAfter::date)
                .filter(at -> at.isBefore(fetched))
                .orElse(fetched);
    }

    private static List<Coordinate> cell(JsonNode root) {
        List<Coordinate> ring = new ArrayList<>();
        for (JsonNode corner : root.path("geometry").path("coordinates").path(0)) {
            OptionalDouble lon = Json.number(corner.path(0));
            OptionalDouble lat = Json.number(corner.path(1));
            boolean sound = lon.isPresent()
                    && lat.isPresent()
                    && Math.abs(lat.getAsDouble()) <= 90
                    && Math.abs(lon.getAsDouble()) <= 180;
            if (!sound) {
                return List.of();
            }
            ring.add(new Coordinate(lon.getAsDouble(), lat.getAsDouble()));
        }
        boolean closed = ring.size() >= 4 && ring.get(0).equals2D(ring.get(ring.size() - 1));
        return closed ? ring : List.of();
    }

    /** The layers of one answer. */
    private record Layers(JsonNode properties, Instant now, Notes notes) {

        List<Spell> read(String name, Quantity quantity) {
            JsonNode values = properties.path(name).path("values");
            if (!values.isArray() || values.isEmpty()) {
                notes.say(name + ": not sent");
                return List.of();
            }
            String unit = properties.path(name).path("uom").asText("");
            if (!quantity.knows(unit)) {
                String said = unit.isEmpty() ? "no unit" : "unknown unit '" + Json.cut(unit) + "'";
                notes.say(name + ": " + said + ", layer left out");
                return List.of();
            }
            List<Spell> spells = new ArrayList<>();
            for (JsonNode entry : values) {
                window(name, entry).ifPresent(window -> {
                    Quantity.Said said = quantity.read(entry.path("value"), unit);
                    said.si()
                            .ifPresentOrElse(
                                    si -> spells.add(new Spell(window, si)),
                                    () -> notes.leftOut(
                                            name, said.whyNot() + " at " + window.from()));
                });
            }
            return Spell.inOrder(name, spells, notes);
        }

        private Optional<Window> window(String name, JsonNode entry) {
            String time = entry.path("validTime").asText("");
            Optional<Window> window = Spans.interval(time, now);
            if (window.isEmpty()) {
                notes.leftOut(name, "'" + Json.cut(time) + "' is not a time interval");
            }
            return window;
        }
    }
}
