package rainward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
import rainward.farm.MappedField;
import rainward.farm.SoilTexture;
import rainward.farm.Survey;

class BoundaryTextTest {

    private static final String SQUARE =
            "{\"type\":\"Polygon\",\"coordinates\":[[[-84.400,42.100],[-84.398,42.100],"
                    + "[-84.398,42.101],[-84.400,42.101],[-84.400,42.100]]]}";

    private static final Field NORTH = new Field(
            "North",
            "Kettle",
            new GeoPoint(42.1, -84.4),
            1.2,
            new Field.Ground(new SoilTexture(0.4, 0.2, 2.5), 0.02),
            new Field.Wish(List.of("turnip and rape"), "full", 2));

    private static String feature(String name, String geometry) {
        return "{\"type\":\"Feature\",\"properties\":{\"name\":\"" + name + "\"},\"geometry\":"
                + geometry + "}";
    }

    private static String collection(String... features) {
        return "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}";
    }

    private static Intake<MappedField> redrawn(String text) {
        return BoundaryText.redrawn(NORTH, Map.of(), text);
    }

    @Test
    void geometryFeatureAndCollectionTellTheSameField() {
        MappedField drawn = Known.accepted(redrawn(SQUARE));

        double areaHa = BoundaryText.areaHa(SQUARE).orElseThrow();
        assertThat(drawn.field().areaHa()).isEqualTo(areaHa).isBetween(1.8, 1.9);
        assertThat(drawn.field().place().latitudeDeg()).isCloseTo(42.1005, within(1e-4));
        assertThat(drawn.field().ground()).isEqualTo(NORTH.ground());
        assertThat(drawn.field().wish()).isEqualTo(NORTH.wish());
        assertThat(drawn.boundaryGeoJson())
                .contains(SQUARE.replace(".400", ".4").replace(".100", ".1"));
        assertThat(Known.accepted(redrawn(feature("Back", SQUARE)))).isEqualTo(drawn);
        assertThat(Known.accepted(redrawn(collection(feature("Back", SQUARE))))).isEqualTo(drawn);
    }

    @Test
    void ofManyTheOneOfThatNameIsMeant() {
        String far = SQUARE.replace("-84.4", "-84.5").replace("-84.398", "-84.498");
        String both = collection(feature("South", far), feature("North", SQUARE));

        assertThat(Known.accepted(redrawn(both))).isEqualTo(Known.accepted(redrawn(SQUARE)));
        assertThat(Known.faults(redrawn(both.replace("North", "Nord"))))
                .singleElement()
                .asString()
                .contains("the boundary holds 2 fields, none of them named \"North\"; give that of"
                        + " this field alone.");
        assertThat(Known.faults(redrawn(collection())))
                .singleElement()
                .asString()
                .contains("0 fields");
    }

    @Test
    void partIsSeededButNeverMoreThanThereIs() {
        var part = BoundaryText.redrawn(NORTH, Map.of("seeded_acres", "2"), SQUARE);
        var more = BoundaryText.redrawn(NORTH, Map.of("seeded_acres", "9"), SQUARE);

        assertThat(Known.accepted(part).field().areaHa()).isCloseTo(0.809, within(1e-3));
        assertThat(Known.faults(more))
                .singleElement()
                .asString()
                .contains("seeded_acres = \"9\"; must be a number from 0.02 to 4.");
    }

    @Test
    void boundaryFarFromWhereTheFieldWasIsDoubted() {
        String far = SQUARE.replace("-84.4", "-84.9").replace("-84.398", "-84.898");

        assertThat(Known.warnings(redrawn(far)))
                .singleElement()
                .asString()
                .contains("the boundary lies 41 km from where North was");
        assertThat(Known.warnings(redrawn(SQUARE))).isEmpty();
    }

    /** As {@link BoundaryFile} refuses them in a file. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "[[-84.4,42.1],[-84.398,42.1],[-84.398,42.101],[-84.4,42.101]] is not closed",
                "[[-84.4,42.1],[-84.398,42.1],[-84.4,42.1]] has 3 positions",
                "[[-84.4,42.1],[-84.398,142.1],[-84.398,42.101],[-84.4,42.1]] a corner of its",
                "[[-84.4,42.1],[-84.398,42.101],[-84.398,42.1],[-84.4,42.101],[-84.4,42.1]] cross",
                "[[-84.4,42.1],[-74.4,42.1],[-74.4,52.1],[-84.4,42.1]] a field has 0.01 to 1000 ha"
            })
    void unsoundOnesAreRefused(String ringAndWords) {
        int end = ringAndWords.lastIndexOf("]] ") + 2;
        String text =
                "{\"type\":\"Polygon\",\"coordinates\":[" + ringAndWords.substring(0, end) + "]}";

        assertThat(Known.faults(redrawn(text)))
                .singleElement()
                .asString()
                .contains(ringAndWords.substring(end + 1));
    }

    @Test
    void whatIsNoBoundarySaysSo() {
        assertThat(Known.faults(redrawn("{\"type\":\n oops}")))
                .singleElement()
                .asString()
                .contains("line 2 column", "is not JSON");
        assertThat(Known.faults(redrawn("{\"type\":\"Topology\"}")))
                .singleElement()
                .asString()
                .contains("is not GeoJSON");
        assertThat(Known.faults(redrawn("{\"type\":\"Point\",\"coordinates\":[-84.4,42.1]}")))
                .singleElement()
                .asString()
                .contains("must be a Polygon or MultiPolygon");
        assertThat(Known.faults(redrawn("[1,2]"))).isNotEmpty();
        assertThat(Known.faults(redrawn("7"))).isNotEmpty();
        assertThat(BoundaryText.areaHa("{}")).isEmpty();
    }

    @Test
    void newFieldIsWhereItsBoundaryIs() {
        Map<String, String> cells = Map.of(
                "name",
                "South",
                "property",
                "Kettle",
                "mix",
                "late rye",
                "texture",
                "loam",
                "recipe",
                "full");

        Survey survey = Known.accepted(BoundaryText.entered(Known.NAMES, cells, SQUARE));

        assertThat(survey.fields()).singleElement().satisfies(mapped -> {
            assertThat(mapped.field().name()).isEqualTo("South");
            assertThat(mapped.field().areaHa())
                    .isEqualTo(BoundaryText.areaHa(SQUARE).orElseThrow());
        });
        assertThat(Known.faults(BoundaryText.entered(Known.NAMES, Map.of(), SQUARE)))
                .hasSizeGreaterThan(3);
    }
}
