package rainward.board.picture;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import rainward.board.picture.Boundary.Spot;
import rainward.farm.Field;

/**
 * The fields of one property, drawn from their boundaries.
 *
 * @param property its name
 * @param width of the drawing, in points of the map
 * @param height of the drawing
 * @param shapes one a field
 * @param tiles pictures below them, where the user named a server
 */
public record GroundMap(
        String property, String width, String height, List<Shape> shapes, List<Tile> tiles) {

    /** Points of the map across a drawing, at least. */
    private static final double POINTS = 512;

    private static final double TILE = 256;
    private static final double EDGE_SHARE = 0.06;
    private static final int DEEPEST_ZOOM = 17;
    private static final double LETTER_SHARE = 0.042;

    /** Width of a label such as {@code MP6 25} in heights of its letters. */
    private static final double LABEL_LETTERS = 4.2;

    private static final double LINES_TO_HOLD_ONE = 3;

    public GroundMap {
        shapes = List.copyOf(shapes);
        tiles = List.copyOf(tiles);
    }

    /**
     * A field.
     *
     * @param field its name
     * @param path its ground
     * @param x middle, for its label
     * @param y the same
     * @param letters height of the label
     */
    public record Shape(String field, String path, String x, String y, String letters) {}

    /** A picture of the user's map server. */
    public record Tile(String address, String x, String y) {}

    /** Draws the fields of a property; the boundaries by field. */
    public static GroundMap of(
            String property,
            List<Field> fields,
            Map<String, String> boundaries,
            Optional<String> tiles) {
        Map<Field, Boundary> ground = fields.stream()
                .collect(Collectors.toMap(
                        f -> f,
                        f -> Boundary.of(f, boundaries.getOrDefault(f.name(), "{}")),
                        (a, b) -> a,
                        java.util.LinkedHashMap::new));
        List<Spot> all = ground.values().stream()
                .flatMap(b -> b.rings().stream())
                .flatMap(List::stream)
                .toList();
        Frame frame = Frame.around(all);
        return new GroundMap(
                property,
                one(frame.width()),
                one(frame.height()),
                ground.entrySet().stream()
                        .map(e -> shape(e.getKey().name(), e.getValue(), frame))
                        .toList(),
                tiles.map(frame::tiles).orElse(List.of()));
    }

    private static Shape shape(String field, Boundary boundary, Frame frame) {
        String path = boundary.rings().stream()
                .map(ring -> ring.stream()
                        .map(spot -> one(frame.x(spot)) + " " + one(frame.y(spot)))
                        .collect(Collectors.joining("L", "M", "Z")))
                .collect(Collectors.joining());
        double letters = frame.width() * LETTER_SHARE;
        Spot label = label(boundary.rings().get(0), frame, letters);
        return new Shape(field, path, one(label.x()), one(label.y()), one(letters));
    }

    /** A label stands in its field, or below one that it would hide, or above at the lower edge. */
    private static Spot label(List<Spot> outer, Frame frame, double letters) {
        DoubleSummaryStatistics across = outer.stream().mapToDouble(frame::x).summaryStatistics();
        DoubleSummaryStatistics down = outer.stream().mapToDouble(frame::y).summaryStatistics();
        double wide = LABEL_LETTERS * letters;
        double x = Math.max(wide / 2, Math.min(frame.width() - wide / 2, across.getAverage()));
        boolean hides = across.getMax() - across.getMin() < wide
                && down.getMax() - down.getMin() < LINES_TO_HOLD_ONE * letters;
        double below = down.getMax() + letters;
        double beside = below < frame.height() ? below : down.getMin() - letters / 3;
        return new Spot(x, hides ? beside : down.getAverage());
    }

    private static String one(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    /**
     * The part of the world that is drawn.
     *
     * @param left edge, 0 to 1 of the world
     * @param top edge
     * @param widthShare of the world
     * @param heightShare of the world
     * @param zoom step of the map tiles
     */
    private record Frame(double left, double top, double widthShare, double heightShare, int zoom) {

        static Frame around(List<Spot> all) {
            double left = all.stream().mapToDouble(Spot::x).min().orElse(0);
            double right = all.stream().mapToDouble(Spot::x).max().orElse(1);
            double top = all.stream().mapToDouble(Spot::y).min().orElse(0);
            double bottom = all.stream().mapToDouble(Spot::y).max().orElse(1);
            double wide = Math.max(right - left, 0.75 * (bottom - top));
            double edge = EDGE_SHARE * wide;
            double width = wide + 2 * edge;
            double start = (left + right) / 2 - width / 2;
            int zoom = (int) Math.floor(Math.log(POINTS / TILE / width) / Math.log(2)) + 1;
            return new Frame(
                    start,
                    top - edge,
                    width,
                    bottom - top + 2 * edge,
                    Math.min(DEEPEST_ZOOM, Math.max(0, zoom)));
        }

        private double scale() {
            return TILE * (1 << zoom);
        }

        double width() {
            return widthShare * scale();
        }

        double height() {
            return heightShare * scale();
        }

        double x(Spot spot) {
            return (spot.x() - left) * scale();
        }

        double y(Spot spot) {
            return (spot.y() - top) * scale();
        }

        List<Tile> tiles(String address) {
            int count = 1 << zoom;
            List<Tile> tiles = new ArrayList<>();
            for (int x = (int) (left * count); x <= (int) ((left + widthShare) * count); x++) {
                for (int y = (int) (top * count); y <= (int) ((top + heightShare) * count); y++) {
                    String at = address.replace("{z}", String.valueOf(zoom))
                            .replace("{x}", String.valueOf(x))
                            .replace("{y}", String.valueOf(y));
                    tiles.add(new Tile(
                            at, one(x * TILE - left * scale()), one(y * TILE - top * scale())));
                }
            }
            return tiles;
        }
    }
}
