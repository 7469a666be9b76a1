package rainward.daemon.yard.paper;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import rainward.daemon.settings.Spelled;
import rainward.daemon.yard.season.FieldYear;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;

/** Fields as a map layer (RFC 7946): longitude first, WGS 84, outer rings anticlockwise. */
final class FieldsGeoJson {

    private static final ObjectMapper JSON = new ObjectMapper();

    private FieldsGeoJson() {}

    static byte[] of(Exports.Gathered all) {
        ObjectNode collection = JSON.createObjectNode();
        collection.put("type", "FeatureCollection");
        ArrayNode features = collection.putArray("features");
        all.fields().forEach(one -> features.add(feature(all, one)));
        try {
            return JSON.writerWithDefaultPrettyPrinter().writeValueAsBytes(collection);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a map layer cannot be written", e);
        }
    }

    private static ObjectNode feature(Exports.Gathered all, FieldYear one) {
        ObjectNode feature = JSON.createObjectNode();
        feature.put("type", "Feature");
        ObjectNode properties = feature.putObject("properties");
        properties.put("name", one.field().name());
        properties.put("property", one.field().property());
        properties.put(
                "acres",
                round(UnitSystem.US_CUSTOMARY.shown(Quantity.AREA, one.field().areaHa())));
        properties.put("hectares", round(one.field().areaHa()));
        properties.put("mix", one.field().wish().mixes().get(0));
        properties.put("state", Spelled.spaced(one.status().state()));
        one.last().ifPresent(last -> seeding(properties, last));
        feature.set(
                "geometry",
                Optional.ofNullable(all.boundaries().get(one.field().name()))
                        .flatMap(Outline::tree)
                        .map(FieldsGeoJson::turned)
                        .orElseGet(() -> point(one)));
        return feature;
    }

    private static void seeding(ObjectNode properties, FieldYear.Seeding last) {
        properties.put("sown_mix", last.mix());
        properties.put("seeded_on", last.day().toString());
        last.look().ifPresent(look -> {
            properties.put("stand", Spelled.spaced(look.result()));
            look.finding()
                    .chanceAtSeeding()
                    .ifPresent(chance -> properties.put("chance_at_seeding", chance));
            look.finding().cause().ifPresent(c -> properties.put("cause", Spelled.spaced(c)));
        });
    }

    private static double round(double value) {
        return Math.round(value * 1000) / 1000.0;
    }

    private static JsonNode point(FieldYear one) {
        ObjectNode point = JSON.createObjectNode();
        point.put("type", "Point");
        point.putArray("coordinates")
                .add(one.field().place().longitudeDeg())
                .add(one.field().place().latitudeDeg());
        return point;
    }

    /** Rings the way round that the standard asks for, whichever way they were imported. */
    private static JsonNode turned(JsonNode geometry) {
        ObjectNode out = JSON.createObjectNode();
        out.put("type", geometry.path("type").asText());
        ArrayNode coordinates = out.putArray("coordinates");
        if (geometry.path("type").asText().equals("MultiPolygon")) {
            geometry.path("coordinates")
                    .forEach(polygon -> turnedRings(polygon, coordinates.addArray()));
        } else {
            turnedRings(geometry.path("coordinates"), coordinates);
        }
        return out;
    }

    private static void turnedRings(JsonNode rings, ArrayNode into) {
        for (int i = 0; i < rings.size(); i++) {
            boolean anticlockwise = area(rings.get(i)) > 0;
            boolean wanted = i == 0;
            ArrayNode ring = into.addArray();
            int points = rings.get(i).size();
            for (int k = 0; k < points; k++) {
                ring.add(rings.get(i).get(anticlockwise == wanted ? k : points - 1 - k));
            }
        }
    }

    /** Twice the signed area in the plane of degrees; above zero is anticlockwise. */
    private static double area(JsonNode ring) {
        double sum = 0;
        for (int i = 0; i + 1 < ring.size(); i++) {
            JsonNode a = ring.get(i);
            JsonNode b = ring.get(i + 1);
            sum += a.path(0).asDouble() * b.path(1).asDouble()
                    - b.path(0).asDouble() * a.path(1).asDouble();
        }
        return sum;
    }
}
