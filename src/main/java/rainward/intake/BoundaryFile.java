package rainward.intake;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
import rainward.farm.MappedField;
import rainward.farm.Quantity;
import rainward.farm.Survey;
import rainward.farm.UnitSystem;

/**
 * Field boundaries as GeoJSON (RFC 7946): a Polygon or MultiPolygon is a field, a Point whose
 * {@code gate} names a property is where machines arrive there. The area is that of the boundary,
 * unless {@code seeded_acres} or {@code seeded_hectares} says that less is to be seeded.
 *
 * @param known what features may refer to
 */
public record BoundaryFile(KnownNames known) {

    private static final ObjectMapper JSON = JsonMapper.builder().build();

    /** A stated area that differs more from the boundary's is told. */
    private static final double WORTH_TELLING = 0.02;

    /** Reads a file: all of it, or nothing and every fault. */
    public Intake<Survey> read(Path file) {
        return TextFile.read(file, text -> survey(file.toString(), text));
    }

    private Intake<Survey> survey(String file, String text) {
        return tree(file, text, root -> {
            Faults faults = new Faults(file);
            SurveyBuilder builder = new SurveyBuilder(faults);
            if (isUsable(root, faults)) {
                takeAll(root, faults, builder);
            }
            return builder.outcome();
        });
    }

    /** Reads what a text of JSON holds; one that is none is a fault with its place. */
    static <T> Intake<T> tree(String file, String text, Function<JsonNode, Intake<T>> use) {
        JsonNode root;
        try {
            root = JSON.readTree(text);
        } catch (JacksonException e) {
            JsonLocation place = e.getLocation();
            return Faults.single(
                    file,
                    place == null
                            ? ""
                            : "line " + place.getLineNr() + " column " + place.getColumnNr(),
                    "is not JSON (" + e.getOriginalMessage().lines().findFirst().orElse("") + ")",
                    "export it again as GeoJSON");
        }
        return use.apply(root);
    }

    static boolean isUsable(JsonNode root, Faults faults) {
        String type = root.path("type").asText();
        if (!type.equals("FeatureCollection") && !type.equals("Feature")) {
            faults.add(
                    "",
                    "is not GeoJSON: its type is \"" + type + "\"",
                    "must be a FeatureCollection");
            return false;
        }
        String system = root.path("crs").path("properties").path("name").asText("CRS84");
        if (!system.endsWith("CRS84") && !system.endsWith("4326")) {
            faults.add(
                    "",
                    "is in the coordinates of " + system,
                    "export it in longitude and latitude, WGS84 (RFC 7946)");
            return false;
        }
        if (type.equals("FeatureCollection") && !root.path("features").isArray()) {
            faults.add("", "has no list of features", "export it again as GeoJSON");
            return false;
        }
        return true;
    }

    private void takeAll(JsonNode root, Faults faults, SurveyBuilder builder) {
        if (root.path("type").asText().equals("Feature")) {
            take(root, 1, faults, builder);
            return;
        }
        int number = 1;
        for (JsonNode feature : root.path("features")) {
            take(feature, number++, faults, builder);
        }
    }

    private void take(JsonNode feature, int number, Faults faults, SurveyBuilder builder) {
        Map<String, String> told = properties(feature.path("properties"));
        String name = told.getOrDefault("name", "");
        String place = "feature " + number + (name.isBlank() ? "" : " (\"" + name.strip() + "\")");
        Particulars cells = Particulars.of(place, told, faults);
        JsonNode geometry = feature.path("geometry");
        if (geometry.path("type").asText().equals("Point") && cells.has("gate")) {
            gate(cells, geometry, builder);
        } else {
            field(cells, geometry, builder);
        }
    }

    private static Map<String, String> properties(JsonNode properties) {
        Map<String, String> told = new LinkedHashMap<>();
        properties.properties().forEach(entry -> {
            JsonNode value = entry.getValue();
            String text = value.isArray()
                    ? StreamSupport.stream(value.spliterator(), false)
                            .map(JsonNode::asText)
                            .collect(Collectors.joining(";"))
                    : value.isNull() ? "" : value.asText();
            told.put(entry.getKey(), text);
        });
        return told;
    }

    private static void gate(Particulars cells, JsonNode geometry, SurveyBuilder builder) {
        Optional<String> property = cells.name("gate");
        Optional<GeoPoint> point = Boundary.position(geometry.path("coordinates"));
        if (point.isEmpty()) {
            cells.faults()
                    .add(
                            cells.place(),
                            "is not at a longitude and latitude",
                            "must be [longitude, latitude] in degrees");
        }
        property.ifPresent(name -> point.ifPresent(at -> builder.gate(name, at, cells.place())));
    }

    void field(Particulars cells, JsonNode geometry, SurveyBuilder builder) {
        Optional<String> name = cells.name("name");
        name.ifPresent(n -> builder.name(n, cells.place()));
        Optional<String> property = cells.name("property");
        FieldParticulars more = new FieldParticulars(cells, known);
        Optional<Field.Ground> ground = more.ground();
        Optional<Field.Wish> wish = more.wish();
        Optional<Boundary> boundary = boundary(cells, geometry);
        if (boundary.isEmpty()) {
            return;
        }
        OptionalDouble areaHa = areaHa(cells, more.statedHa(), boundary.get().areaHa());
        boolean whole = name.isPresent() && property.isPresent() && areaHa.isPresent();
        if (whole && ground.isPresent() && wish.isPresent()) {
            Field field = new Field(
                    name.get(),
                    property.get(),
                    boundary.get().inside(),
                    areaHa.getAsDouble(),
                    ground.get(),
                    wish.get());
            builder.add(new MappedField(field, Optional.of(geometry.toString())));
        }
    }

    static Optional<Boundary> boundary(Particulars cells, JsonNode geometry) {
        try {
            return Optional.of(Boundary.of(geometry));
        } catch (Boundary.Unsound e) {
            cells.faults().add(cells.place(), e.found(), e.remedy());
            return Optional.empty();
        }
    }

    /**
     * What is to be seeded, if that is sound [ha].
     *
     * @param stated area that the file tells beside the boundary [ha]
     */
    static OptionalDouble areaHa(Particulars cells, OptionalDouble stated, double boundaryHa) {
        if (stated.isPresent() && Math.abs(stated.getAsDouble() / boundaryHa - 1) > WORTH_TELLING) {
            cells.faults()
                    .warn(
                            cells.place(),
                            "states " + UnitSystem.US_CUSTOMARY.area(stated.getAsDouble())
                                    + ", its boundary holds "
                                    + UnitSystem.US_CUSTOMARY.area(boundaryHa),
                            "the boundary counts; to seed a part, say so in seeded_acres");
        }
        double mostAc = UnitSystem.US_CUSTOMARY.shown(Quantity.AREA, boundaryHa) * 1.01;
        OptionalDouble acres = cells.number("seeded_acres", 0.02, Math.ceil(mostAc * 100) / 100);
        OptionalDouble hectares =
                cells.number("seeded_hectares", 0.01, Math.ceil(boundaryHa * 101) / 100);
        boolean faulty = (cells.has("seeded_acres") && acres.isEmpty())
                || (cells.has("seeded_hectares") && hectares.isEmpty());
        if (faulty) {
            return OptionalDouble.empty();
        }
        return acres.isPresent()
                ? OptionalDouble.of(
                        UnitSystem.US_CUSTOMARY.inside(Quantity.AREA, acres.getAsDouble()))
                : OptionalDouble.of(hectares.orElse(boundaryHa));
    }
}
