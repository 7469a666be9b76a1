package rainward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.farm.MappedField;
import rainward.farm.Survey;

/** Whatever a file holds, reading it ends in fields or in sentences, never in an exception. */
class MangledFilesTest {

    private static final String GEOJSON = """
            {"type":"FeatureCollection","features":[{"type":"Feature","properties":{"name":"North",
            "property":"Kettle","mix":"late rye","texture":"loam","recipe":"full","priority":2},
            "geometry":{"type":"MultiPolygon","coordinates":[[[[-84.4,42.1],[-84.398,42.1],
            [-84.398,42.101],[-84.4,42.101],[-84.4,42.1]],[[-84.3995,42.1002],[-84.3985,42.1002],
            [-84.3985,42.1008],[-84.3995,42.1002]]]]}}]}
            """;

    private static final String CSV = """
            name,property,latitude,longitude,acres,mix,sand_percent,clay_percent,recipe
            North,Kettle,42.1,-84.4,4,late rye,60,10,full
            "South, far",Kettle,42.11,-84.41,2.5,turnip and rape,40,20,worked ground
            """;

    @TempDir
    Path folder;

    @Test
    void mangledBoundariesEndInWords() throws IOException {
        mangle(GEOJSON, folder.resolve("fields.geojson"), 500);
    }

    @Test
    void mangledTablesEndInWords() throws IOException {
        mangle(CSV, folder.resolve("fields.csv"), 500);
    }

    private static void mangle(String whole, Path file, int times) throws IOException {
        SplittableRandom any = new SplittableRandom(20260714);
        int rejected = 0;
        for (int i = 0; i < times; i++) {
            Files.write(file, mangled(whole, any));
            Intake<?>[] outcome = new Intake<?>[1];
            assertThatCode(() -> outcome[0] = new FieldFile(Known.NAMES).read(file))
                    .as(() -> "on: " + text(file))
                    .doesNotThrowAnyException();
            if (outcome[0] instanceof Intake.Rejected<?> no) {
                rejected++;
                assertThat(no.faults()).isNotEmpty();
            } else {
                assertThat(((Survey) Known.accepted(outcome[0])).fields())
                        .extracting(MappedField::field)
                        .allSatisfy(field -> assertThat(field.areaHa()).isPositive());
            }
        }
        assertThat(rejected).isBetween(times / 10, times - 1);
    }

    private static byte[] mangled(String whole, SplittableRandom any) {
        byte[] bytes = whole.getBytes(StandardCharsets.UTF_8);
        int changes = 1 + any.nextInt(4);
        for (int i = 0; i < changes; i++) {
            int at = any.nextInt(bytes.length);
            switch (any.nextInt(4)) {
                case 0 -> bytes[at] = (byte) any.nextInt(256);
                case 1 -> bytes[at] = (byte) "\"[]{},:;-0e9\n\0".charAt(any.nextInt(14));
                case 2 -> bytes = Arrays.copyOf(bytes, Math.max(1, at));
                default -> {
                    int from = any.nextInt(bytes.length);
                    int length = Math.min(any.nextInt(12), bytes.length - Math.max(at, from));
                    System.arraycopy(bytes.clone(), from, bytes, at, length);
                }
            }
        }
        return bytes;
    }

    private static String text(Path file) {
        try {
            return new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
        } catch (IOException e) {
            return e.toString();
        }
    }
}
