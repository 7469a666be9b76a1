package rainward.feed.soil;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import rainward.farm.SoilTexture;
import rainward.farm.SurveyedSoil;
import rainward.feed.reading.Json;
import rainward.feed.reading.Unreadable;
import rainward.feed.terms.Service;
import rainward.weather.source.LastGoodCopies.Copy;

/**
 * Reads the world grid of soil: whole numbers to be divided by a factor that stands beside them.
 * Organic matter is 1.724 times organic carbon (van Bemmelen, from memory).
 */
public final class SoilGridLayers {

    private static final double MATTER_PER_CARBON = 1.724;
    private static final double MOST_OM_PCT = 8;
    private static final double TOP_CM = 30;

    /** Grams of carbon in a kilogram of pure organic matter, 1000 / 1.724, rounded up. */
    private static final double MOST = 600;

    private SoilGridLayers() {}

    public static SurveyedSoil read(Copy copy) throws Unreadable {
        JsonNode layers = Json.read(copy.body()).path("properties").path("layers");
        Map<String, OptionalDouble> means = new HashMap<>();
        for (JsonNode layer : layers) {
            means.put(layer.path("name").asText(""), topMean(layer));
        }
        OptionalDouble sand = means.getOrDefault("sand", OptionalDouble.empty());
        OptionalDouble clay = means.getOrDefault("clay", OptionalDouble.empty());
        OptionalDouble carbon = means.getOrDefault("soc", OptionalDouble.empty());
        if (sand.orElse(101) > 100 || clay.orElse(101) > 100) {
            throw new Unreadable("has no soil at this place");
        }
        // Sand and clay in percent, carbon in g/kg.
        double om = Math.min(MOST_OM_PCT, carbon.orElse(0) / 10 * MATTER_PER_CARBON);
        double whole = Math.max(100, sand.orElse(0) + clay.orElse(0));
        return new SurveyedSoil(
                new SoilTexture(sand.orElse(0) / whole, clay.orElse(0) / whole, om),
                OptionalDouble.empty(),
                new SurveyedSoil.Origin(Service.SOIL_GRIDS.code(), copy.times().fetchedAt()),
                "mean of a 250 m cell, 0 to 30 cm");
    }

    /** Mean over the top 30 cm, weighted by thickness. */
    private static OptionalDouble topMean(JsonNode layer) {
        OptionalDouble factor = Json.number(layer.path("unit_measure").path("d_factor"));
        if (factor.isEmpty() || factor.getAsDouble() <= 0) {
            return OptionalDouble.empty();
        }
        Mean mean = new Mean();
        for (JsonNode depth : layer.path("depths")) {
            double from = Json.number(depth.path("range").path("top_depth")).orElse(0);
            double to = Json.number(depth.path("range").path("bottom_depth")).orElse(0);
            OptionalDouble value = Json.number(depth.path("values").path("mean"));
            double read = value.orElse(-1) / factor.getAsDouble();
            if (read >= 0 && read <= MOST && from >= 0 && to > from && to <= TOP_CM) {
                mean.add(OptionalDouble.of(read), to - from);
            }
        }
        return mean.value();
    }
}
