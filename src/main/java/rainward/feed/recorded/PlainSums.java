package rainward.feed.recorded;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.weather.rain.RainAmount;
import rainward.weather.source.EnsembleRain;
import rainward.weather.source.ForecastSeries;

/** Sums by a second, plain reading of recorded answers, to hold the clients' against. */
final class PlainSums {

    private static final double CLOSE = 1e-9;

    private PlainSums() {}

    /** Single hours as long as they last, then six hours. */
    static List<String> metNorway(JsonNode steps, ForecastSeries series) {
        double sum = 0;
        int used = 0;
        for (JsonNode step : steps) {
            JsonNode hour = step.path("data").path("next_1_hours").path("details");
            JsonNode six = step.path("data").path("next_6_hours").path("details");
            JsonNode details = hour.has("precipitation_amount") ? hour : six;
            if (details.has("precipitation_amount")) {
                sum += details.path("precipitation_amount").asDouble();
                used++;
            }
        }
        List<String> losses = sums(sum, series);
        if (used != series.rain().amounts().size()) {
            losses.add(
                    used + " amounts sent, read were " + series.rain().amounts().size());
        }
        return losses;
    }

    static List<String> openMeteo(JsonNode root, ForecastSeries series) {
        double factor =
                root.path("hourly_units").path("precipitation").asText("mm").equals("inch")
                        ? 25.4
                        : 1;
        double sum = 0;
        JsonNode column = root.path("hourly").path("precipitation");
        for (int i = 0; i < column.size(); i++) {
            // The first value belongs to the hour before the first time, which lies in the past.
            sum += i == 0 ? 0 : column.path(i).asDouble(0) * factor;
        }
        boolean named = series.warnings().stream().anyMatch(w -> w.startsWith("precipitation:"));
        return named ? new ArrayList<>() : sums(sum, series);
    }

    static List<String> ensemble(JsonNode hourly, EnsembleRain rain) {
        List<String> losses = new ArrayList<>();
        double sum = 0;
        for (double[] member : rain.rainMm()) {
            for (double mm : member) {
                sum += mm;
            }
        }
        double plain = 0;
        for (String name : names(hourly)) {
            for (JsonNode value : hourly.path(name)) {
                plain += value.asDouble(0);
            }
        }
        boolean named = rain.warnings().stream().anyMatch(w -> w.startsWith("precipitation"));
        if (!named && (rain.members() != members(hourly) || Math.abs(sum - plain) > 1e-6)) {
            losses.add(members(hourly) + " members of " + plain + " mm sent, read were "
                    + rain.members() + " of " + sum + " mm");
        }
        return losses;
    }

    /** How many columns are members of an ensemble. */
    static int members(JsonNode hourly) {
        return names(hourly).size();
    }

    private static List<String> names(JsonNode hourly) {
        List<String> names = new ArrayList<>();
        hourly.fieldNames().forEachRemaining(name -> {
            boolean plain = name.equals("precipitation");
            if (plain || name.startsWith("precipitation_member")) {
                names.add(name);
            }
        });
        return names;
    }

    static Optional<Instant> firstTime(JsonNode root) {
        JsonNode time = root.path("hourly").path("time").path(0);
        int offset = root.path("utc_offset_seconds").asInt(0);
        if (time.isIntegralNumber()) {
            return Optional.of(Instant.ofEpochSecond(time.asLong()));
        }
        return time.isTextual() && time.asText().matches("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d")
                ? Optional.of(LocalDateTime.parse(time.asText())
                        .toInstant(ZoneOffset.ofTotalSeconds(offset)))
                : Optional.empty();
    }

    private static List<String> sums(double sum, ForecastSeries series) {
        List<String> losses = new ArrayList<>();
        double kept = series.rain().amounts().stream()
                .mapToDouble(RainAmount::amountMm)
                .sum();
        if (Math.abs(sum - kept) > CLOSE) {
            losses.add(sum + " mm sent, read were " + kept + " mm");
        }
        return losses;
    }
}
