package rainward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.farm.GeoPoint;
import rainward.farm.MappedField;
import rainward.farm.Property;
import rainward.farm.Survey;

class BoundaryFileTest {

    private static final ObjectMapper JSON = new ObjectMapper();

    private static final String SQUARE =
            "[[-84.400,42.100],[-84.398,42.100],[-84.398,42.101],[-84.400,42.101],[-84.400,42.100]]";

    @TempDir
    Path folder;

    private static String feature(String more, String type, String coordinates) {
        return """
                {"type":"Feature","properties":{"name":"North","property":"Kettle",
                "mix":"turnip and rape","texture":"loam","recipe":"full"%s},
                "geometry":{"type":"%s","coordinates":%s}}""".formatted(more, type, coordinates);
    }

    private Intake<Survey> read(String... features) throws IOException {
        return raw("{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features)
                + "]}");
    }

    private Intake<Survey> raw(String text) throws IOException {
        Path file = Files.writeString(folder.resolve("fields.geojson"), text);
        return new FieldFile(Known.NAMES).read(file);
    }

    private static Boundary boundary(String type, String coordinates)
            throws IOException, Boundary.Unsound {
        return Boundary.of(
                JSON.readTree("{\"type\":\"" + type + "\",\"coordinates\":" + coordinates + "}"));
    }

    private String sentence(String rest) {
        return folder.resolve("fields.geojson") + rest;
    }

    @Nested
    class Areas {

        /**
         * A quadrangle between two meridians and two parallels, small enough that geodesic and
         * parallel differ by less than the tolerance: dLon x (q(n) - q(s)) on WGS84 with the
         * authalic q of Snyder 1987, Map Projections, USGS PP 1395, eq. 3-12.
         */
        @Test
        void quadrangleHoldsWhatTheAuthalicFormulaSays() throws Exception {
            double expectedM2 = Math.toRadians(0.002)
                    * (6_378_137.0 * 6_378_137.0 / 2)
                    * (authalic(42.101) - authalic(42.100));

            assertThat(boundary("Polygon", "[" + SQUARE + "]").areaHa() * 10_000)
                    .isCloseTo(expectedM2, within(expectedM2 * 1e-5));
        }

        private static double authalic(double latitudeDeg) {
            double e2 = 0.006_694_379_990_14;
            double e = Math.sqrt(e2);
            double sin = Math.sin(Math.toRadians(latitudeDeg));
            return (1 - e2)
                    * (sin / (1 - e2 * sin * sin)
                            - Math.log((1 - e * sin) / (1 + e * sin)) / (2 * e));
        }

        @Test
        void holesAreTakenOutAndPartsAddUp() throws Exception {
            String hole = "[[-84.3995,42.1002],[-84.3985,42.1002],[-84.3985,42.1008],"
                    + "[-84.3995,42.1008],[-84.3995,42.1002]]";
            String other = SQUARE.replace("-84.4", "-84.5").replace("-84.398", "-84.498");
            double wholeHa = boundary("Polygon", "[" + SQUARE + "]").areaHa();
            double holeHa = boundary("Polygon", "[" + hole + "]").areaHa();
            double otherHa = boundary("Polygon", "[" + other + "]").areaHa();

            assertThat(boundary("Polygon", "[" + SQUARE + "," + hole + "]").areaHa())
                    .isCloseTo(wholeHa - holeHa, within(1e-9));
            assertThat(boundary("MultiPolygon", "[[" + SQUARE + "," + hole + "],[" + other + "]]")
                            .areaHa())
                    .isCloseTo(wholeHa - holeHa + otherHa, within(1e-9));
        }

        @Test
        void eitherWayRoundAndAnyHeightIsTheSameGround() throws Exception {
            String around = "[[-84.400,42.100,251.3],[-84.400,42.101,250],[-84.398,42.101,249],"
                    + "[-84.398,42.100,250],[-84.400,42.100,251.3]]";

            assertThat(boundary("Polygon", "[" + around + "]").areaHa())
                    .isCloseTo(boundary("Polygon", "[" + SQUARE + "]").areaHa(), within(1e-9));
        }

        /** As boundaries traced from pictures do: two blocks that meet at a corner, in one ring. */
        @Test
        void ringThatTouchesItselfAtACornerHoldsBothBlocks() throws Exception {
            String touching = "[[-84.400,42.100],[-84.398,42.100],[-84.398,42.101],"
                    + "[-84.396,42.101],[-84.396,42.102],[-84.398,42.102],[-84.398,42.101],"
                    + "[-84.400,42.101],[-84.400,42.100]]";

            assertThat(boundary("Polygon", "[" + touching + "]").areaHa())
                    .isCloseTo(2 * boundary("Polygon", "[" + SQUARE + "]").areaHa(), within(1e-4));
        }

        @Test
        void dateLineMakesNoDifference() throws Exception {
            String across = "[[179.999,42.100],[-179.999,42.100],[-179.999,42.101],"
                    + "[179.999,42.101],[179.999,42.100]]";
            Boundary boundary = boundary("Polygon", "[" + across + "]");

            assertThat(boundary.areaHa())
                    .isCloseTo(boundary("Polygon", "[" + SQUARE + "]").areaHa(), within(1e-9));
            assertThat(Math.abs(boundary.inside().longitudeDeg())).isGreaterThan(179.99);
        }

        @Test
        void wherePolygonLiesEastOrWestDoesNotChangeIt() throws Exception {
            SplittableRandom any = new SplittableRandom(11);
            double hereHa = boundary("Polygon", "[" + SQUARE + "]").areaHa();
            for (int i = 0; i < 200; i++) {
                double west = any.nextDouble(-180, 179);
                String moved = String.format(
                        Locale.ROOT,
                        "[[[%1$.9f,42.1],[%2$.9f,42.1],[%2$.9f,42.101],[%1$.9f,42.101],"
                                + "[%1$.9f,42.1]]]",
                        west,
                        west + 0.002);

                assertThat(boundary("Polygon", moved).areaHa()).isCloseTo(hereHa, within(1e-5));
            }
        }

        /** USDA Crop Sequence Boundaries 2017 to 2024, a public sample with published acres. */
        @Test
        void publishedAcresOfRealFieldsAreMetWithinOneInTenThousand() throws Exception {
            Path data = Path.of("../shared/data/field-areas/usda_csb_2017_2024_sample100.geojson");
            Assumptions.assumeTrue(Files.exists(data), "skipped: " + data + " is not there");
            int fields = 0;
            for (JsonNode feature : JSON.readTree(data.toFile()).path("features")) {
                double publishedHa =
                        feature.path("properties").path("CSBACRES").doubleValue() * 0.40468564224;
                double areaHa = Boundary.of(feature.path("geometry")).areaHa();

                assertThat(areaHa).isCloseTo(publishedHa, within(publishedHa * 1e-4));
                fields++;
            }
            assertThat(fields).isEqualTo(100);
        }
    }

    @Nested
    class Values {

        @Test
        void boundaryIsKeptAsItCame() throws IOException {
            MappedField mapped = Known.accepted(read(feature("", "Polygon", "[" + SQUARE + "]")))
                    .fields()
                    .get(0);

            assertThat(JSON.readTree(mapped.boundaryGeoJson().orElseThrow()))
                    .isEqualTo(JSON.readTree(
                            "{\"type\":\"Polygon\",\"coordinates\":[" + SQUARE + "]}"));
            assertThat(mapped.field().place().latitudeDeg()).isBetween(42.1, 42.101);
            assertThat(mapped.field().place().longitudeDeg()).isBetween(-84.4, -84.398);
        }

        @Test
        void pointInsideARingIsNotInItsHole() throws IOException, Boundary.Unsound {
            String hole = "[[-84.3999,42.1001],[-84.3981,42.1001],[-84.3981,42.1009],"
                    + "[-84.3999,42.1009],[-84.3999,42.1001]]";
            GeoPoint inside =
                    boundary("Polygon", "[" + SQUARE + "," + hole + "]").inside();

            assertThat(inside.longitudeDeg() < -84.3999
                            || inside.longitudeDeg() > -84.3981
                            || inside.latitudeDeg() < 42.1001
                            || inside.latitudeDeg() > 42.1009)
                    .isTrue();
        }

        @Test
        void gatePointIsWhereMachinesArriveAndNumbersAndListsAreTaken() throws IOException {
            Survey survey = Known.accepted(read(
                    feature(
                            ",\"priority\":3,\"fallback_mixes\":[\"late rye\"]",
                            "Polygon",
                            "[" + SQUARE + "]"),
                    "{\"type\":\"Feature\",\"properties\":{\"gate\":\"Kettle\"},\"geometry\":"
                            + "{\"type\":\"Point\",\"coordinates\":[-84.41,42.11]}}"));

            assertThat(survey.gates())
                    .containsExactly(new Property("Kettle", new GeoPoint(42.11, -84.41)));
            assertThat(survey.fields().get(0).field().wish().priority()).isEqualTo(3);
            assertThat(survey.fields().get(0).field().wish().mixes())
                    .containsExactly("turnip and rape", "late rye");
        }

        @Test
        void statedAcresThatDifferAreToldAndTheBoundaryCounts() throws IOException {
            Intake<Survey> intake = read(feature(",\"acres\":9", "Polygon", "[" + SQUARE + "]"));

            assertThat(Known.warnings(intake))
                    .containsExactly(
                            sentence(" feature 1 (\"North\"): states 9 ac, its boundary holds"
                                    + " 4.5 ac; the boundary counts; to seed a part, say so in"
                                    + " seeded_acres."));
            assertThat(Known.accepted(intake).fields().get(0).field().areaHa())
                    .isCloseTo(1.837, within(0.001));
        }

        @Test
        void partOfAFieldMayBeSeeded() throws IOException {
            Intake<Survey> intake =
                    read(feature(",\"seeded_acres\":2.5", "Polygon", "[" + SQUARE + "]"));

            assertThat(Known.accepted(intake).fields().get(0).field().areaHa())
                    .isCloseTo(2.5 * 0.40468564224, within(1e-12));
        }
    }

    @Nested
    class Faulty {

        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                value = {
                    // A bow tie: its sides cross in the middle.
                    "Polygon|[[[-84.4,42.1],[-84.398,42.101],[-84.398,42.1],[-84.4,42.101],"
                            + "[-84.4,42.1]]]"
                            + "|its boundary crosses itself near 42.10050 N, 84.39900 W;"
                            + " draw it again there.",
                    "Polygon|[[[-84.4,42.1],[-84.398,42.1],[-84.398,42.101],[-84.4,42.101]]]"
                            + "|a ring of its boundary is not closed; its last position must be the"
                            + " same as its first, 42.10000 N, 84.40000 W.",
                    "Polygon|[[[-84.4,42.1],[-84.398,42.1],[-84.4,42.1]]]"
                            + "|a ring of its boundary has 3 positions; must have at least 4, the last"
                            + " the same as the first.",
                    "Polygon|[[[-650336.7,1447440.5],[1,1],[2,2],[-650336.7,1447440.5]]]"
                            + "|a corner of its boundary is [-650336.7,1447440.5]; must be [longitude,"
                            + " latitude] in degrees, WGS84.",
                    "Polygon|[[[\"-84.4\",42.1],[1,1],[2,2],[1,1]]]"
                            + "|a corner of its boundary is [\"-84.4\",42.1]; must be [longitude,"
                            + " latitude] in degrees, WGS84.",
                    "Polygon|[]|its boundary has no ring; export it again as GeoJSON.",
                    "LineString|[[-84.4,42.1],[-84.398,42.1]]"
                            + "|its geometry is \"LineString\"; must be a Polygon or MultiPolygon.",
                    "Polygon|[[[-84.4,42.1],[-84.398,42.1],[-84.398,42.1],[-84.4,42.1]]]"
                            + "|its boundary is not sound (too few distinct points in geometry"
                            + " component) near 42.10000 N, 84.40000 W; draw it again there.",
                    "Polygon|[[[-84,42],[-83,42],[-83,43],[-84,43],[-84,42]]]"
                            + "|its boundary holds 915570.0000 ha; a field has 0.01 to 1000 ha (0.02 to"
                            + " 2471 ac); check its coordinates.",
                })
        void unsoundBoundaryIsToldWithItsFieldAndPlace(
                String type, String coordinates, String sentence) throws IOException {
            assertThat(Known.faults(read(feature("", type, coordinates))))
                    .singleElement()
                    .asString()
                    .matches(words -> words.replaceAll("holds [0-9.]+ ha", "holds 915570.0000 ha")
                            .equals(sentence(" feature 1 (\"North\"): " + sentence)));
        }

        @Test
        void holeOutsideIsToldWithItsPlace() throws IOException {
            String far = SQUARE.replace("-84.4", "-84.5").replace("-84.398", "-84.498");

            assertThat(Known.faults(read(feature("", "Polygon", "[" + SQUARE + "," + far + "]"))))
                    .singleElement()
                    .asString()
                    .contains(
                            "its boundary is not sound (hole lies outside shell) near 42.10000 N,");
        }

        @Test
        void everyFaultOfEveryFeatureIsToldAndNothingIsTaken() throws IOException {
            Intake<Survey> intake = read(
                    feature("", "Polygon", "[" + SQUARE + "]"),
                    feature("", "Polygon", "[" + SQUARE + "]"),
                    feature(",\"slope_percent\":-3", "Point", "[1,2]").replace("loam", "peat"));

            assertThat(Known.faults(intake))
                    .containsExactly(
                            sentence(" feature 2 (\"North\"): name \"North\" stands at feature 1"
                                    + " (\"North\") already; each field needs a name of its own."),
                            sentence(" feature 3 (\"North\"): name \"North\" stands at feature 1"
                                    + " (\"North\") already; each field needs a name of its own."),
                            sentence(
                                    " feature 3 (\"North\"): slope_percent = \"-3\"; must be a number"
                                            + " from 0 to 60."),
                            sentence(
                                    " feature 3 (\"North\"): texture \"peat\" is not known; known are"
                                            + " loam, sandy loam."),
                            sentence(" feature 3 (\"North\"): its geometry is \"Point\"; must be a"
                                    + " Polygon or MultiPolygon."));
        }

        @Test
        void malformedJsonIsToldWithItsLine() throws IOException {
            assertThat(Known.faults(raw("{\"type\":\"FeatureCollection\",\n\"features\":[}")))
                    .singleElement()
                    .asString()
                    .startsWith(sentence(" line 2 column 13: is not JSON ("))
                    .endsWith("export it again as GeoJSON.");
        }

        @Test
        void numberThatIsNoneIsMalformed() throws IOException {
            assertThat(Known.faults(read(feature("", "Polygon", "[[[NaN,42.1]]]"))))
                    .singleElement()
                    .asString()
                    .contains("is not JSON (");
        }

        @Test
        void otherJsonIsNotTakenForFields() throws IOException {
            assertThat(Known.faults(raw("{\"type\":\"Topology\"}")))
                    .containsExactly(
                            sentence(": is not GeoJSON: its type is \"Topology\"; must be a"
                                    + " FeatureCollection."));
            assertThat(Known.faults(raw("[1,2]")))
                    .containsExactly(sentence(
                            ": is not GeoJSON: its type is \"\"; must be a FeatureCollection."));
        }

        @Test
        void otherCoordinatesAreNamed() throws IOException {
            assertThat(Known.faults(
                            raw("{\"type\":\"FeatureCollection\",\"crs\":{\"type\":\"name\","
                                    + "\"properties\":{\"name\":\"urn:ogc:def:crs:EPSG::26916\"}},"
                                    + "\"features\":[]}")))
                    .containsExactly(
                            sentence(": is in the coordinates of urn:ogc:def:crs:EPSG::26916;"
                                    + " export it in longitude and latitude, WGS84 (RFC 7946)."));
        }

        @Test
        void deepNestingIsRefusedNotFollowed() throws IOException {
            assertThat(Known.faults(raw("[".repeat(200_000))))
                    .singleElement()
                    .asString()
                    .contains("is not JSON (");
        }
    }
}
