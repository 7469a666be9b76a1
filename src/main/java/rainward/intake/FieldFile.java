package rainward.intake;

import java.nio.file.Path;
import java.util.Locale;
import rainward.farm.Survey;

/**
 * Fields in whatever form a person has them: boundaries as GeoJSON or a table as CSV.
 *
 * @param known what they may refer to
 */
public record FieldFile(KnownNames known) {

    /** Reads a file: all of it, or nothing and every fault. */
    public Intake<Survey> read(Path file) {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        if (name.endsWith(".geojson") || name.endsWith(".json")) {
            return new BoundaryFile(known).read(file);
        }
        if (name.endsWith(".csv") || name.endsWith(".txt")) {
            return new FieldTable(known).read(file);
        }
        return Faults.single(
                file.toString(),
                "",
                "is of no form that can be read",
                "name a .geojson file with boundaries or a .csv file with points and acres");
    }
}
