package rainward.intake;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import rainward.farm.Field;
import rainward.farm.MappedField;
import rainward.farm.Survey;

/**
 * The boundary of one field as somebody pastes it: a GeoJSON geometry, a Feature, or a
 * FeatureCollection that holds the field (RFC 7946), with the checks of {@link BoundaryFile}.
 */
public final class BoundaryText {

    private static final ObjectMapper JSON = JsonMapper.builder().build();

    /** Farther than that from where it was, it is likely the boundary of another field [km]. */
    private static final double FAR_KM = 2;

    private BoundaryText() {}

    /**
     * A field that was not there, with its boundary.
     *
     * @param known what it may refer to
     * @param cells as those of an imported feature, by column
     */
    public static Intake<Survey> entered(
            KnownNames known, Map<String, String> cells, String geoJson) {
        return read(geoJson, cells.getOrDefault("name", ""), (geometry, faults) -> {
            SurveyBuilder builder = new SurveyBuilder(faults);
            new BoundaryFile(known).field(Particulars.of("", cells, faults), geometry, builder);
            return builder.outcome();
        });
    }

    /**
     * A field that is there, with another boundary; it lies where that is and is as large.
     *
     * @param cells {@code seeded_acres} or {@code seeded_hectares}, where less is to be seeded
     */
    public static Intake<MappedField> redrawn(
            Field field, Map<String, String> cells, String geoJson) {
        return read(geoJson, field.name(), (geometry, faults) -> {
            Particulars told = Particulars.of("", cells, faults);
            Optional<MappedField> drawn = BoundaryFile.boundary(told, geometry)
                    .flatMap(boundary -> drawn(field, told, boundary, geometry));
            return faults.outcome(drawn::orElseThrow);
        });
    }

    private static Optional<MappedField> drawn(
            Field field, Particulars told, Boundary boundary, JsonNode geometry) {
        OptionalDouble areaHa =
                BoundaryFile.areaHa(told, OptionalDouble.empty(), boundary.areaHa());
        double movedKm = boundary.inside().distanceKm(field.place());
        if (movedKm > FAR_KM) {
            told.faults()
                    .warn(
                            "",
                            "the boundary lies " + Math.round(movedKm) + " km from where "
                                    + field.name() + " was",
                            "check that it is the right one");
        }
        return areaHa.isEmpty()
                ? Optional.empty()
                : Optional.of(new MappedField(
                        new Field(
                                field.name(),
                                field.property(),
                                boundary.inside(),
                                areaHa.getAsDouble(),
                                field.ground(),
                                field.wish()),
                        Optional.of(geometry.toString())));
    }

    /** What a boundary that was taken in holds [ha]; empty where it cannot be read any more. */
    public static OptionalDouble areaHa(String geometry) {
        try {
            return OptionalDouble.of(Boundary.of(JSON.readTree(geometry)).areaHa());
        } catch (JacksonException | Boundary.Unsound e) {
            return OptionalDouble.empty();
        }
    }

    private static <T> Intake<T> read(
            String geoJson, String field, BiFunction<JsonNode, Faults, Intake<T>> use) {
        return BoundaryFile.tree("", geoJson, root -> {
            Faults faults = new Faults("");
            Optional<JsonNode> geometry = geometry(root, field, faults);
            return geometry.isPresent()
                    ? use.apply(geometry.get(), faults)
                    : faults.outcome(() -> Optional.<T>empty().orElseThrow());
        });
    }

    private static Optional<JsonNode> geometry(JsonNode root, String field, Faults faults) {
        if (root.has("coordinates")) {
            return Optional.of(root);
        }
        if (!BoundaryFile.isUsable(root, faults)) {
            return Optional.empty();
        }
        return root.has("features")
                ? ofMany(root, field, faults)
                : Optional.of(root.path("geometry"));
    }

    private static Optional<JsonNode> ofMany(JsonNode root, String field, Faults faults) {
        List<JsonNode> areas = new ArrayList<>();
        List<JsonNode> named = new ArrayList<>();
        for (JsonNode feature : root.path("features")) {
            if (feature.path("geometry").path("type").asText().endsWith("Polygon")) {
                areas.add(feature);
                if (feature.path("properties").path("name").asText().strip().equals(field)) {
                    named.add(feature);
                }
            }
        }
        List<JsonNode> meant = named.isEmpty() ? areas : named;
        if (meant.size() != 1) {
            faults.add(
                    "",
                    "the boundary holds " + meant.size() + " fields"
                            + (named.isEmpty() && areas.size() > 1
                                    ? ", none of them named \"" + field + "\""
                                    : ""),
                    "give that of this field alone");
            return Optional.empty();
        }
        return Optional.of(meant.get(0).path("geometry"));
    }
}
