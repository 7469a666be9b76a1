package rainward.intake;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
import rainward.farm.MappedField;
import rainward.farm.NearestName;
import rainward.farm.Survey;

/**
 * A list of fields as a table: one line a field, with a point inside it and its area.
 *
 * @param known what it may refer to
 */
public record FieldTable(KnownNames known) {

    /** Reads a file: all of it, or nothing and every fault. */
    public Intake<Survey> read(Path file) {
        return SpreadSheet.open(file, this::survey);
    }

    /** Takes one field as somebody typed it, by column. */
    public Intake<Survey> entered(Map<String, String> typed) {
        Faults faults = new Faults("");
        SurveyBuilder builder = new SurveyBuilder(faults);
        take(Particulars.of("", typed, faults), builder);
        return builder.outcome();
    }

    private Intake<Survey> survey(SpreadSheet sheet) {
        Faults faults = sheet.faults();
        sheet.columns().stream()
                .filter(column -> !FieldParticulars.COLUMNS.contains(column))
                .forEach(column -> unused(column, faults));
        SurveyBuilder builder = new SurveyBuilder(faults);
        sheet.rows().forEach(row -> take(row, builder));
        return builder.outcome();
    }

    private static void unused(String column, Faults faults) {
        Set<String> columns = FieldParticulars.COLUMNS;
        faults.warn(
                "line 1",
                "column \"" + column + "\" is not used",
                NearestName.of(column, columns)
                        .map(near -> "the nearest that is used is \"" + near + "\"")
                        .orElse("leave it, or rename it"));
    }

    private void take(Particulars row, SurveyBuilder builder) {
        Optional<String> name = row.name("name");
        name.ifPresent(n -> builder.name(n, row.place()));
        Optional<String> property = row.name("property");
        Optional<GeoPoint> place = point(row, "latitude", "longitude");
        FieldParticulars more = new FieldParticulars(row, known);
        OptionalDouble areaHa = more.statedHa();
        if (areaHa.isEmpty() && !row.has("acres") && !row.has("hectares")) {
            row.wrong("acres", "give the area to be seeded as acres or hectares");
        }
        Optional<Field.Ground> ground = more.ground();
        Optional<Field.Wish> wish = more.wish();
        gate(row, property, builder);
        boolean whole = name.isPresent() && property.isPresent() && place.isPresent();
        if (whole && areaHa.isPresent() && ground.isPresent() && wish.isPresent()) {
            Field field = new Field(
                    name.get(),
                    property.get(),
                    place.get(),
                    areaHa.getAsDouble(),
                    ground.get(),
                    wish.get());
            builder.add(new MappedField(field, Optional.empty()));
        }
    }

    private static void gate(Particulars row, Optional<String> property, SurveyBuilder builder) {
        if (row.has("gate_latitude") || row.has("gate_longitude")) {
            Optional<GeoPoint> gate = point(row, "gate_latitude", "gate_longitude");
            property.ifPresent(
                    name -> gate.ifPresent(point -> builder.gate(name, point, row.place())));
        }
    }

    private static Optional<GeoPoint> point(Particulars row, String north, String east) {
        OptionalDouble latitudeDeg = row.required(north, -90, 90);
        OptionalDouble longitudeDeg = row.required(east, -180, 180);
        return latitudeDeg.isPresent() && longitudeDeg.isPresent()
                ? Optional.of(new GeoPoint(latitudeDeg.getAsDouble(), longitudeDeg.getAsDouble()))
                : Optional.empty();
    }
}
