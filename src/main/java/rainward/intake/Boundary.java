package rainward.intake;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.PolygonArea;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;
import rainward.farm.GeoPoint;

/**
 * Edge of a field on the WGS84 ellipsoid; its sides are geodesics.
 *
 * @param areaHa what it holds, holes taken out [ha]
 * @param inside a point within it
 */
record Boundary(double areaHa, GeoPoint inside) {

    private static final GeometryFactory PLANE = new GeometryFactory();
    private static final double SQUARE_METRES_PER_HA = 10_000;

    /** Smaller or larger is no field but a slip. */
    private static final double SMALLEST_HA = 0.01;

    private static final double LARGEST_HA = 1000;

    /** Why a geometry is no boundary, and what would be. */
    static final class Unsound extends Exception {
        private static final long serialVersionUID = 1L;

        private final String found;
        private final String remedy;

        Unsound(String found, String remedy) {
            super(found);
            this.found = found;
            this.remedy = remedy;
        }

        String found() {
            return found;
        }

        String remedy() {
            return remedy;
        }
    }

    /**
     * Reads a Polygon or MultiPolygon. Either way round of a ring is taken (RFC 7946 section
     * 3.1.6), heights are ignored, and a ring may cross the date line.
     */
    static Boundary of(JsonNode geometry) throws Unsound {
        String type = geometry.path("type").asText("none");
        JsonNode coordinates = geometry.path("coordinates");
        if (type.equals("Polygon")) {
            return of(List.of(coordinates));
        }
        if (type.equals("MultiPolygon") && coordinates.isArray()) {
            List<JsonNode> parts = new ArrayList<>();
            coordinates.forEach(parts::add);
            return of(parts);
        }
        throw new Unsound("its geometry is \"" + type + "\"", "must be a Polygon or MultiPolygon");
    }

    private static Boundary of(List<JsonNode> parts) throws Unsound {
        List<Polygon> polygons = new ArrayList<>();
        double areaHa = 0;
        for (JsonNode part : parts) {
            List<List<GeoPoint>> rings = rings(part);
            areaHa += areaHa(rings);
            polygons.add(polygon(rings, rings.get(0).get(0).longitudeDeg()));
        }
        Geometry plane = polygons.size() == 1
                ? polygons.get(0)
                : PLANE.createMultiPolygon(polygons.toArray(Polygon[]::new));
        requireSound(plane);
        if (!(areaHa >= SMALLEST_HA && areaHa <= LARGEST_HA)) {
            throw new Unsound(
                    String.format(Locale.ROOT, "its boundary holds %.4f ha", areaHa),
                    "a field has 0.01 to 1000 ha (0.02 to 2471 ac); check its coordinates");
        }
        Point inside = plane.getInteriorPoint();
        return new Boundary(areaHa, wrapped(inside.getY(), inside.getX()));
    }

    private static List<List<GeoPoint>> rings(JsonNode part) throws Unsound {
        List<List<GeoPoint>> rings = new ArrayList<>();
        for (JsonNode ring : part) {
            rings.add(ring(ring));
        }
        if (rings.isEmpty()) {
            throw new Unsound("its boundary has no ring", "export it again as GeoJSON");
        }
        return rings;
    }

    private static List<GeoPoint> ring(JsonNode ring) throws Unsound {
        List<GeoPoint> points = new ArrayList<>();
        for (JsonNode position : ring) {
            points.add(position(position)
                    .orElseThrow(() -> new Unsound(
                            "a corner of its boundary is " + shortened(position),
                            "must be [longitude, latitude] in degrees, WGS84")));
        }
        if (points.size() < 4) {
            throw new Unsound(
                    "a ring of its boundary has " + points.size() + " positions",
                    "must have at least 4, the last the same as the first");
        }
        if (!points.get(0).equals(points.get(points.size() - 1))) {
            throw new Unsound(
                    "a ring of its boundary is not closed",
                    "its last position must be the same as its first, " + words(points.get(0)));
        }
        return points;
    }

    private static String shortened(JsonNode position) {
        String text = position.toString();
        return text.length() <= 40 ? text : text.substring(0, 37) + "...";
    }

    /** A position, if it is one; a height is ignored. */
    static Optional<GeoPoint> position(JsonNode position) {
        double longitudeDeg = degrees(position.path(0));
        double latitudeDeg = degrees(position.path(1));
        boolean right = Math.abs(longitudeDeg) <= 180 && Math.abs(latitudeDeg) <= 90;
        return right ? Optional.of(new GeoPoint(latitudeDeg, longitudeDeg)) : Optional.empty();
    }

    private static double degrees(JsonNode number) {
        return number.isNumber() ? number.doubleValue() : Double.NaN;
    }

    private static double areaHa(List<List<GeoPoint>> rings) {
        double areaM2 = areaM2(rings.get(0));
        for (List<GeoPoint> hole : rings.subList(1, rings.size())) {
            areaM2 -= areaM2(hole);
        }
        return areaM2 / SQUARE_METRES_PER_HA;
    }

    /** Area enclosed by geodesics (Karney 2013, section 6), whichever way round [m2]. */
    private static double areaM2(List<GeoPoint> ring) {
        PolygonArea area = new PolygonArea(Geodesic.WGS84, false);
        ring.subList(1, ring.size())
                .forEach(point -> area.AddPoint(point.latitudeDeg(), point.longitudeDeg()));
        return Math.abs(area.Compute(false, true).area);
    }

    /** The ring on a plane of degrees, with longitudes counted on over the date line. */
    private static Polygon polygon(List<List<GeoPoint>> rings, double fromDeg) {
        LinearRing[] all =
                rings.stream().map(ring -> onPlane(ring, fromDeg)).toArray(LinearRing[]::new);
        LinearRing[] holes = List.of(all).subList(1, all.length).toArray(LinearRing[]::new);
        return PLANE.createPolygon(all[0], holes);
    }

    private static LinearRing onPlane(List<GeoPoint> ring, double fromDeg) {
        return PLANE.createLinearRing(ring.stream()
                .map(p -> new Coordinate(
                        fromDeg + Math.IEEEremainder(p.longitudeDeg() - fromDeg, 360),
                        p.latitudeDeg()))
                .toArray(Coordinate[]::new));
    }

    private static void requireSound(Geometry plane) throws Unsound {
        IsValidOp soundness = new IsValidOp(plane);
        // Boundaries traced from pictures touch themselves at corners; their area is sound.
        soundness.setSelfTouchingRingFormingHoleValid(true);
        TopologyValidationError error = soundness.getValidationError();
        if (error == null
                || error.getErrorType() == TopologyValidationError.DISCONNECTED_INTERIOR) {
            return;
        }
        GeoPoint at =
                wrapped(error.getCoordinate().getY(), error.getCoordinate().getX());
        boolean crossing = error.getErrorType() == TopologyValidationError.SELF_INTERSECTION
                || error.getErrorType() == TopologyValidationError.RING_SELF_INTERSECTION;
        throw new Unsound(
                (crossing
                                ? "its boundary crosses itself"
                                : "its boundary is not sound ("
                                        + error.getMessage().toLowerCase(Locale.ROOT) + ")")
                        + " near " + words(at),
                "draw it again there");
    }

    private static GeoPoint wrapped(double latitudeDeg, double longitudeDeg) {
        return new GeoPoint(latitudeDeg, Math.IEEEremainder(longitudeDeg, 360));
    }

    private static String words(GeoPoint place) {
        return String.format(
                Locale.ROOT,
                "%.5f %s, %.5f %s",
                Math.abs(place.latitudeDeg()),
                place.latitudeDeg() < 0 ? "S" : "N",
                Math.abs(place.longitudeDeg()),
                place.longitudeDeg() < 0 ? "W" : "E");
    }
}
