package rainward.daemon.yard.paper;

import com.lowagie.text.Element;
import com.lowagie.text.FontFactory;
import com.lowagie.text.Phrase;
import com.lowagie.text.pdf.ColumnText;
import com.lowagie.text.pdf.PdfContentByte;
import java.awt.Color;
import java.util.List;
import rainward.farm.FieldState;
import rainward.farm.GeoPoint;

/** Fields of one property as they lie, north up, shaded by what became of them. */
final class FieldMap {

    private static final double PAD = 0.06;

    private final List<Shape> shapes;
    private final Box box;
    private final double eastPerNorth;

    /**
     * A field on the map.
     *
     * @param name beside it
     * @param middle a point inside it
     * @param rings outer edges
     * @param state that shades it
     */
    record Shape(String name, GeoPoint middle, List<List<GeoPoint>> rings, FieldState state) {
        Shape {
            rings = List.copyOf(rings);
        }
    }

    /** What all shapes lie in. */
    private record Box(double southDeg, double westDeg, double northDeg, double eastDeg) {

        static Box of(List<GeoPoint> points) {
            return new Box(
                    points.stream().mapToDouble(GeoPoint::latitudeDeg).min().orElse(0),
                    points.stream().mapToDouble(GeoPoint::longitudeDeg).min().orElse(0),
                    points.stream().mapToDouble(GeoPoint::latitudeDeg).max().orElse(1),
                    points.stream().mapToDouble(GeoPoint::longitudeDeg).max().orElse(1));
        }

        double heightDeg() {
            return Math.max(1e-6, northDeg - southDeg);
        }

        double widthDeg() {
            return Math.max(1e-6, eastDeg - westDeg);
        }
    }

    FieldMap(List<Shape> shapes) {
        this.shapes = List.copyOf(shapes);
        this.box = Box.of(shapes.stream()
                .flatMap(shape -> shape.rings().stream().flatMap(List::stream))
                .toList());
        this.eastPerNorth = Math.cos(Math.toRadians((box.southDeg() + box.northDeg()) / 2));
    }

    boolean isEmpty() {
        return shapes.isEmpty();
    }

    /** Draws it on the open page. */
    void on(Paper paper, float heightPt) {
        float floorPt = paper.drawingFloor(heightPt);
        PdfContentByte pen = paper.writer().getDirectContent();
        double scale = (1 - 2 * PAD)
                * Math.min(
                        paper.widthPt() / (box.widthDeg() * eastPerNorth),
                        heightPt / box.heightDeg());
        double leftPt =
                paper.leftPt() + (paper.widthPt() - box.widthDeg() * eastPerNorth * scale) / 2;
        double lowPt = floorPt + (heightPt - box.heightDeg() * scale) / 2;
        Place place = new Place(leftPt, lowPt, scale);
        shapes.forEach(shape -> draw(pen, shape, place));
    }

    /** Where a point of the earth lies on the page. */
    private record Place(double leftPt, double lowPt, double scale) {}

    private void draw(PdfContentByte pen, Shape shape, Place place) {
        pen.saveState();
        pen.setColorFill(shade(shape.state()));
        pen.setColorStroke(Color.DARK_GRAY);
        pen.setLineWidth(0.7f);
        for (List<GeoPoint> ring : shape.rings()) {
            pen.moveTo(x(ring.get(0), place), y(ring.get(0), place));
            ring.stream().skip(1).forEach(at -> pen.lineTo(x(at, place), y(at, place)));
            pen.closePathFillStroke();
        }
        pen.restoreState();
        GeoPoint middle = shape.middle();
        ColumnText.showTextAligned(
                pen,
                Element.ALIGN_CENTER,
                new Phrase(
                        Paper.printable(shape.name()),
                        FontFactory.getFont(FontFactory.HELVETICA, 7)),
                x(middle, place),
                low(shape, place) - 8,
                0);
    }

    /** A name stands below its field, which may be smaller than the name. */
    private float low(Shape shape, Place place) {
        return (float) shape.rings().stream()
                .flatMap(List::stream)
                .mapToDouble(at -> y(at, place))
                .min()
                .orElse(place.lowPt());
    }

    private float x(GeoPoint at, Place place) {
        return (float) (place.leftPt()
                + (at.longitudeDeg() - box.westDeg()) * eastPerNorth * place.scale());
    }

    private float y(GeoPoint at, Place place) {
        return (float) (place.lowPt() + (at.latitudeDeg() - box.southDeg()) * place.scale());
    }

    /** Light enough to read a name on, and apart in grey too. */
    static Color shade(FieldState state) {
        return switch (state) {
            case UP -> new Color(0x9c, 0xc9, 0x8b);
            case SEEDED -> new Color(0xdd, 0xe8, 0xb4);
            case FAILED -> new Color(0xd9, 0x9a, 0x7c);
            case IN_WORK -> new Color(0xee, 0xdd, 0xb0);
            case PENDING -> new Color(0xf6, 0xf4, 0xec);
            case DROPPED -> new Color(0xd6, 0xd6, 0xd6);
        };
    }
}
