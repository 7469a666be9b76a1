package rainward.intake;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import rainward.farm.MappedField;
import rainward.farm.Survey;

/** Files of a person, grown by coverage: each ends in fields or in sentences. */
class FileFuzz {

    private static final GaugeTable GAUGES = new GaugeTable(
            List.of("Kettle", "Mill Pond"),
            ZoneId.of("America/Detroit"),
            Instant.parse("2026-07-15T10:20:00Z"));

    @TempDir
    static Path folder;

    @FuzzTest(maxDuration = "10m")
    void geoJson(byte[] bytes) throws IOException {
        fields(written("fields.geojson", bytes));
    }

    @FuzzTest(maxDuration = "10m")
    void csv(byte[] bytes) throws IOException {
        fields(written("fields.csv", bytes));
        told(GAUGES.read(written("rain.csv", bytes)));
    }

    private static Path written(String name, byte[] bytes) throws IOException {
        return Files.write(folder.resolve(name), bytes);
    }

    private static void fields(Path file) {
        Intake<Survey> intake = new FieldFile(Known.NAMES).read(file);
        told(intake);
        if (intake instanceof Intake.Accepted<Survey> accepted) {
            for (MappedField mapped : accepted.value().fields()) {
                // Greatest and least are those of any field on earth, so that NaN is caught too.
                if (!(mapped.field().areaHa() > 0 && mapped.field().areaHa() < 1e5)) {
                    throw new IllegalStateException("accepted " + mapped.field());
                }
            }
        }
    }

    private static void told(Intake<?> intake) {
        if (intake instanceof Intake.Rejected<?> rejected
                && (rejected.faults().isEmpty() || rejected.words().isBlank())) {
            throw new IllegalStateException("refused without a word");
        }
    }
}
