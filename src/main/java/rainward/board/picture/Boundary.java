package rainward.board.picture;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import rainward.farm.Field;
import rainward.farm.GeoPoint;

/**
 * The ground of a field as rings on a flat map.
 *
 * @param rings outer and inner ones alike
 */
public record Boundary(List<List<Spot>> rings) {

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int CORNERS = 24;

    /** Degrees of latitude to a metre: a quarter of the meridian is 10 001 966 m (WGS 84). */
    private static final double DEG_PER_M = 90 / 10_001_966.0;

    public Boundary {
        rings = rings.stream().map(List::copyOf).toList();
    }

    /** A place on the map of the whole world, 0 to 1 from west to east and from north to south. */
    public record Spot(double x, double y) {

        /** Spherical Mercator, as map tiles have it (EPSG:3857). */
        static Spot of(double latitudeDeg, double longitudeDeg) {
            double sine = Math.sin(Math.toRadians(latitudeDeg));
            double y = 0.5 - Math.log((1 + sine) / (1 - sine)) / (4 * Math.PI);
            return new Spot(longitudeDeg / 360 + 0.5, y);
        }
    }

    /** From GeoJSON; a field that came as a point is drawn as a circle of its area. */
    public static Boundary of(Field field, String geoJson) {
        List<List<Spot>> rings = new ArrayList<>();
        try {
            collect(JSON.readTree(geoJson).path("coordinates"), rings);
        } catch (JsonProcessingException e) {
            rings.clear();
        }
        return rings.isEmpty() ? circle(field) : new Boundary(rings);
    }

    private static void collect(JsonNode node, List<List<Spot>> rings) {
        if (node.path(0).path(0).isNumber()) {
            List<Spot> ring = new ArrayList<>();
            node.forEach(point ->
                    ring.add(Spot.of(point.path(1).asDouble(), point.path(0).asDouble())));
            rings.add(ring);
        } else {
            node.forEach(inner -> collect(inner, rings));
        }
    }

    static Boundary circle(Field field) {
        GeoPoint middle = field.place();
        double radiusDeg = Math.sqrt(field.areaHa() * 10_000 / Math.PI) * DEG_PER_M;
        double stretch = 1 / Math.cos(Math.toRadians(middle.latitudeDeg()));
        List<Spot> ring = new ArrayList<>();
        for (int i = 0; i < CORNERS; i++) {
            double angle = 2 * Math.PI * i / CORNERS;
            ring.add(Spot.of(
                    middle.latitudeDeg() + radiusDeg * Math.sin(angle),
                    middle.longitudeDeg() + radiusDeg * stretch * Math.cos(angle)));
        }
        return new Boundary(List.of(ring));
    }
}
