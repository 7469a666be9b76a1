package rainward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
import rainward.farm.MappedField;
import rainward.farm.Property;
import rainward.farm.SoilTexture;
import rainward.farm.Survey;

class FieldTableTest {

    private static final String HEADER =
            "name,property,latitude,longitude,acres,mix,texture,recipe";
    private static final String GOOD = "North,Kettle,42.1,-84.4,4,turnip and rape,loam,full";

    @TempDir
    Path folder;

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("fields.csv"), text);
    }

    private Intake<Survey> read(String... lines) throws IOException {
        return new FieldFile(Known.NAMES).read(file(String.join("\n", lines)));
    }

    private String sentence(String rest) {
        return folder.resolve("fields.csv") + " " + rest;
    }

    @Nested
    class Values {

        @Test
        void lineBecomesAField() throws IOException {
            Survey survey = Known.accepted(read(
                    "name,property,latitude,longitude,acres,mix,fallback_mixes,texture,"
                            + "organic_matter_percent,slope_percent,priority,recipe",
                    "North,Kettle,42.1,-84.4,4,turnip and rape,late rye,Sandy Loam,3.1,6,2,full"));

            assertThat(survey.fields())
                    .containsExactly(new MappedField(
                            new Field(
                                    "North",
                                    "Kettle",
                                    new GeoPoint(42.1, -84.4),
                                    4 * 0.40468564224,
                                    new Field.Ground(new SoilTexture(0.65, 0.10, 3.1), 0.06),
                                    new Field.Wish(
                                            List.of("turnip and rape", "late rye"), "full", 2)),
                            Optional.empty()));
            assertThat(survey.middles())
                    .containsExactly(new Property("Kettle", new GeoPoint(42.1, -84.4)));
        }

        @Test
        void shortColumnNamesSharesAndDecimalCommasAreTaken() throws IOException {
            Field field = Known.accepted(read(
                            "Name;Property;Lat;Lon;Ha;Mix;Sand percent;Clay percent;Recipe",
                            "North;Kettle;42,1;-84,4;1,6;late rye;60;12,5;full"))
                    .fields()
                    .get(0)
                    .field();

            assertThat(field.place()).isEqualTo(new GeoPoint(42.1, -84.4));
            assertThat(field.areaHa()).isEqualTo(1.6);
            assertThat(field.ground().texture()).isEqualTo(new SoilTexture(0.6, 0.125, 2.5));
            assertThat(field.ground().slopeFraction()).isEqualTo(0.02);
        }

        @Test
        void quotedCellsMayHoldCommasAndByteOrderMarksAreForgiven() throws IOException {
            Survey survey = Known.accepted(read(
                    "\uFEFF" + HEADER,
                    "\"North, by the creek\",Kettle,42.1,-84.4,4,late rye,loam,full",
                    ""));

            assertThat(survey.fields().get(0).field().name()).isEqualTo("North, by the creek");
        }

        @Test
        void statedGateIsWhereMachinesArrive() throws IOException {
            Survey survey = Known.accepted(
                    read(HEADER + ",gate_latitude,gate_longitude", GOOD + ",42.11,-84.41"));

            assertThat(survey.gates())
                    .containsExactly(new Property("Kettle", new GeoPoint(42.11, -84.41)));
            assertThat(survey.middles()).isEmpty();
        }

        @Test
        void acresAndHectaresGiveTheSameGround() throws IOException {
            SplittableRandom any = new SplittableRandom(7);
            for (int i = 0; i < 100; i++) {
                double areaHa = 0.1 + any.nextDouble(30);
                double us = onlyArea("acres", areaHa / 0.40468564224);
                double metric = onlyArea("hectares", areaHa);

                assertThat(us).isCloseTo(metric, within(1e-9));
            }
        }

        private double onlyArea(String column, double number) throws IOException {
            return Known.accepted(read(
                            HEADER.replace("acres", column),
                            String.format(
                                    Locale.ROOT,
                                    "North,Kettle,42.1,-84.4,%.14f,late rye,loam,full",
                                    number)))
                    .fields()
                    .get(0)
                    .field()
                    .areaHa();
        }

        @Test
        void unusedColumnAndFarFieldAreToldButTaken() throws IOException {
            Intake<Survey> intake = read(
                    HEADER + ",priorty",
                    GOOD + ",2",
                    GOOD.replace("North", "South") + ",2",
                    "East,Kettle,42.1,-80.4,4,late rye,loam,full,2");

            assertThat(Known.warnings(intake))
                    .containsExactly(
                            sentence(
                                    "line 1: column \"priorty\" is not used; the nearest that is used"
                                            + " is \"priority\"."),
                            sentence(
                                    "line 4: \"East\" lies 331 km from its property \"Kettle\"; check"
                                            + " its latitude and longitude."));
        }
    }

    @Nested
    class Faulty {

        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                value = {
                    ",4,|,-4,|acres = \"-4\"; must be a number from 0.02 to 2471.",
                    ",4,|,NaN,|acres = \"NaN\"; must be a number from 0.02 to 2471.",
                    ",4,|,four,|acres = \"four\"; must be a number from 0.02 to 2471.",
                    ",4,|,,|acres is missing; give the area to be seeded as acres or hectares.",
                    "turnip and rape|turnip and rap|mix \"turnip and rap\" is not known; the nearest"
                            + " is \"turnip and rape\".",
                    "turnip and rape|''|mix is missing; must be one of turnip and rape, late rye.",
                    ",loam,|,loma,|texture \"loma\" is not known; the nearest is \"loam\".",
                    ",loam,|,,|texture is missing; give either a class (loam, sandy loam) or"
                            + " sand_percent and clay_percent.",
                    ",full|,ful|recipe \"ful\" is not known; the nearest is \"full\".",
                    ",full|,|recipe is missing; must be one of full, worked ground.",
                    "42.1|142.1|latitude = \"142.1\"; must be a number from -90 to 90.",
                    "-84.4|''|longitude is missing; must be a number from -180 to 180.",
                    "North|''|name is missing; must be a name of 1 to 80 printable characters.",
                })
        void badCellIsToldWithItsLineAndWhatWouldBeRight(
                String right, String wrong, String sentence) throws IOException {
            assertThat(Known.faults(read(HEADER, "", GOOD.replace(right, wrong))))
                    .containsExactly(sentence("line 3: " + sentence));
        }

        @Test
        void everyFaultIsToldAndNothingIsTaken() throws IOException {
            Intake<Survey> intake = read(
                    HEADER,
                    GOOD,
                    GOOD.replace("-84.4", "west"),
                    GOOD.replace("North", "South").replace(",4,", ",0,"));

            assertThat(Known.faults(intake))
                    .containsExactly(
                            sentence(
                                    "line 3: name \"North\" stands at line 2 already; each field needs"
                                            + " a name of its own."),
                            sentence("line 3: longitude = \"west\"; must be a number from -180 to"
                                    + " 180."),
                            sentence("line 4: acres = \"0\"; must be a number from 0.02 to 2471."));
        }

        @Test
        void lineBreakInsideACellDoesNotShiftTheLinesAfterIt() throws IOException {
            Intake<Survey> intake = read(
                    HEADER,
                    "\"North\nby the creek\",Kettle,42.1,-84.4,4,late rye,loam,full",
                    GOOD.replace(",4,", ",-4,"));

            assertThat(Known.faults(intake))
                    .hasSize(2)
                    .anyMatch(words -> words.startsWith(sentence("line 2: name = ")))
                    .anyMatch(words -> words.startsWith(sentence("line 4: acres = \"-4\"")));
        }

        @Test
        void sharesAboveTheWholeAreRefused() throws IOException {
            Intake<Survey> intake = read(
                    HEADER.replace("texture", "sand_percent,clay_percent"),
                    GOOD.replace("loam", "60,55"));

            assertThat(Known.faults(intake))
                    .containsExactly(sentence("line 2: clay_percent = \"55\"; must not exceed 100"
                            + " together with sand_percent."));
        }

        @Test
        void columnThatComesTwiceIsRefused() throws IOException {
            assertThat(Known.faults(read(HEADER + ",Acres", GOOD + ",5")))
                    .containsExactly(sentence(
                            "line 1: column \"acres\" comes twice; leave one of them out."));
        }

        @Test
        void unquotedCommaIsToldAsWhatItIs() throws IOException {
            assertThat(Known.faults(read(HEADER, "North, by the creek" + GOOD.substring(5))))
                    .contains(sentence(
                            "line 2: has 9 cells, the header has 8; put text that holds the"
                                    + " separator into quotes."));
        }

        @Test
        void openQuoteIsToldWithItsLine() throws IOException {
            assertThat(Known.faults(read(HEADER, "\"North,Kettle")))
                    .singleElement()
                    .asString()
                    .startsWith(sentence("line 2: is not a line of a table ("))
                    .endsWith("look for a quote that is not closed.");
        }

        @Test
        void emptyFileHoldsNoField() throws IOException {
            assertThat(Known.faults(read(HEADER)))
                    .containsExactly(folder.resolve("fields.csv")
                            + ": holds no field; name a file with at least one.");
        }

        @Test
        void fileOfAnotherEncodingIsNamed() throws IOException {
            Path file = Files.write(
                    folder.resolve("fields.csv"),
                    (HEADER + "\nM\u00fchle").getBytes(StandardCharsets.ISO_8859_1));

            assertThat(Known.faults(new FieldFile(Known.NAMES).read(file)))
                    .containsExactly(file + ": is not UTF-8 text; save it as UTF-8.");
        }

        @Test
        void fileThatIsNotThereOrOfNoKnownFormIsNamed() {
            Path absent = folder.resolve("absent.csv");
            Path picture = folder.resolve("fields.png");

            assertThat(Known.faults(new FieldFile(Known.NAMES).read(absent)))
                    .containsExactly(absent + ": is not there; check the name.");
            assertThat(Known.faults(new FieldFile(Known.NAMES).read(picture)))
                    .containsExactly(
                            picture + ": is of no form that can be read; name a .geojson file"
                                    + " with boundaries or a .csv file with points and acres.");
        }
    }
}
