package rainward.daemon.yard.paper;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.farm.GeoPoint;

/** The outer edges of a boundary that was imported (RFC 7946). */
final class Outline {

    private static final ObjectMapper JSON = new ObjectMapper();

    private Outline() {}

    /** A stored boundary as a tree; empty where it cannot be read any more. */
    static Optional<JsonNode> tree(String geoJson) {
        try {
            return Optional.of(JSON.readTree(geoJson));
        } catch (JsonProcessingException e) {
            return Optional.empty();
        }
    }

    /** Outer rings of a Polygon or MultiPolygon. */
    static List<List<GeoPoint>> rings(JsonNode geometry) {
        List<List<GeoPoint>> rings = new ArrayList<>();
        JsonNode coordinates = geometry.path("coordinates");
        if (geometry.path("type").asText().equals("MultiPolygon")) {
            coordinates.forEach(polygon -> rings.add(ring(polygon.path(0))));
        } else {
            rings.add(ring(coordinates.path(0)));
        }
        return rings.stream().filter(ring -> ring.size() > 2).toList();
    }

    private static List<GeoPoint> ring(JsonNode ring) {
        List<GeoPoint> points = new ArrayList<>();
        ring.forEach(point ->
                points.add(new GeoPoint(point.path(1).asDouble(), point.path(0).asDouble())));
        return points;
    }
}
