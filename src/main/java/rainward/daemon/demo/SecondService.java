package rainward.daemon.demo;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.TreeMap;

/**
 * The demo's recorded cells in the form of the second service: the same invented weather, told by
 * the hour, so that there is somebody to fail over to.
 */
final class SecondService {

    private static final ObjectMapper JSON = new ObjectMapper();

    private SecondService() {}

    /** A cell as a timeseries from its first hour on. */
    static String of(JsonNode cell) {
        JsonNode layers = cell.path("properties");
        Map<Instant, Double> temp = hours(layers.path("temperature"), false);
        Map<Instant, Double> dew = hours(layers.path("dewpoint"), false);
        Map<Instant, Double> sky = hours(layers.path("skyCover"), false);
        Map<Instant, Double> wind = hours(layers.path("windSpeed"), false);
        Map<Instant, Double> rain = hours(layers.path("quantitativePrecipitation"), true);
        Map<Instant, Double> chance = hours(layers.path("probabilityOfPrecipitation"), false);
        ArrayNode series = JSON.createArrayNode();
        temp.forEach((at, airTempC) -> {
            ObjectNode step = series.addObject().put("time", at.toString());
            ObjectNode details = step.putObject("data").putObject("instant").putObject("details");
            details.put("air_temperature", airTempC);
            put(details, "dew_point_temperature", dew.get(at), 1);
            put(details, "cloud_area_fraction", sky.get(at), 1);
            put(details, "wind_speed", wind.get(at), 1 / 3.6);
            if (rain.containsKey(at)) {
                ObjectNode next = ((ObjectNode) step.path("data"))
                        .putObject("next_1_hours")
                        .putObject("details");
                put(next, "precipitation_amount", rain.get(at), 1);
                put(next, "probability_of_precipitation", chance.get(at), 1);
            }
        });
        ObjectNode answer = JSON.createObjectNode().put("type", "Feature");
        ObjectNode properties = answer.putObject("properties");
        ObjectNode meta = properties.putObject("meta");
        meta.put(
                "updated_at",
                OffsetDateTime.parse(layers.path("updateTime").asText())
                        .toInstant()
                        .toString());
        meta.putObject("units")
                .put("air_temperature", "celsius")
                .put("dew_point_temperature", "celsius")
                .put("cloud_area_fraction", "%")
                .put("wind_speed", "m/s")
                .put("precipitation_amount", "mm")
                .put("probability_of_precipitation", "%");
        properties.set("timeseries", series);
        return answer.toString();
    }

    private static void put(
            ObjectNode details,
            String name,
            @org.jspecify.annotations.Nullable Double value,
            double factor) {
        if (value != null) {
            details.put(name, value * factor);
        }
    }

    /** Values by the hour; a sum is shared out evenly over its interval. */
    private static Map<Instant, Double> hours(JsonNode layer, boolean sum) {
        Map<Instant, Double> hours = new TreeMap<>();
        for (JsonNode entry : layer.path("values")) {
            String[] halves = entry.path("validTime").asText().split("/", -1);
            Instant from = OffsetDateTime.parse(halves[0]).toInstant();
            long span = Duration.parse(halves[1]).toHours();
            double value = entry.path("value").asDouble() / (sum ? span : 1);
            for (int h = 0; h < span; h++) {
                hours.put(from.plus(Duration.ofHours(h)), value);
            }
        }
        return hours;
    }
}
