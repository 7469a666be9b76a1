package rainward.feed.recorded;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainShares;
import rainward.weather.source.ForecastSeries;

/**
 * A second, plain reading of raw layers to hold the client's against: whole hours and plain
 * durations, as recorded, and nothing else.
 *
 * @param temperature in the unit of the file
 * @param amounts of rain, in the unit of the file
 * @param chances in percent
 * @param celsius true where temperature is in degrees C
 */
record PlainGrid(
        List<Entry> temperature, List<Entry> amounts, List<Entry> chances, boolean celsius) {

    private static final double CLOSE = 1e-9;

    /** A value and when it holds. */
    record Entry(Instant from, Instant to, double value) {}

    static PlainGrid of(JsonNode properties) {
        return new PlainGrid(
                entries(properties.path("temperature")),
                entries(properties.path("quantitativePrecipitation")),
                entries(properties.path("probabilityOfPrecipitation")),
                properties.path("temperature").path("uom").asText("").endsWith("degC"));
    }

    private static List<Entry> entries(JsonNode layer) {
        List<Entry> entries = new ArrayList<>();
        for (JsonNode node : layer.path("values")) {
            String[] halves = node.path("validTime").asText("").split("/", -1);
            if (halves.length == 2 && node.path("value").isNumber()) {
                try {
                    Instant from = OffsetDateTime.parse(halves[0]).toInstant();
                    Instant to = from.plus(Duration.parse(halves[1]));
                    entries.add(new Entry(from, to, node.path("value").asDouble()));
                } catch (DateTimeException e) {
                    // Not a plain interval: the client has to name it, here it is passed by.
                }
            }
        }
        return entries;
    }

    /** First time of any of the three layers. */
    Optional<Instant> start() {
        List<Entry> all = new ArrayList<>(temperature);
        all.addAll(amounts);
        all.addAll(chances);
        return all.stream().map(Entry::from).min(Comparator.naturalOrder());
    }

    /** What the series lacks or has otherwise. */
    List<String> losses(ForecastSeries series) {
        List<String> losses = new ArrayList<>();
        boolean overlap = series.warnings().stream().anyMatch(w -> w.contains("overlaps"));
        double sum = amounts.stream().mapToDouble(Entry::value).sum();
        double kept = series.rain().amounts().stream()
                .mapToDouble(RainAmount::amountMm)
                .sum();
        double hourly = 0;
        for (double mm :
                RainShares.hourlyMm(series.rain().amounts(), series.hourly().start(), 24 * 60)) {
            hourly += mm;
        }
        boolean named = series.warnings().stream().anyMatch(w -> w.startsWith("quantitativeP"));
        if (!named && !overlap && Math.abs(sum - kept) > CLOSE) {
            losses.add("intervals hold " + sum + " mm, read were " + kept + " mm");
        }
        if (Math.abs(kept - hourly) > CLOSE) {
            losses.add("hours add up to " + hourly + " mm, intervals to " + kept + " mm");
        }
        temperatureLosses(series, losses);
        chanceLosses(series, losses);
        return losses;
    }

    private void temperatureLosses(ForecastSeries series, List<String> losses) {
        for (Entry entry : celsius ? temperature : List.<Entry>of()) {
            long hour = Duration.between(series.hourly().start(), entry.from()).toHours();
            boolean inside = hour >= 0 && hour < series.hourly().hours();
            boolean wholeHour = entry.from().getEpochSecond() % 3600 == 0;
            if (inside
                    && wholeHour
                    && Math.abs(series.hourly().airTempC()[(int) hour] - entry.value()) > CLOSE) {
                losses.add("temperature at " + entry.from() + " is not " + entry.value());
                return;
            }
        }
    }

    private void chanceLosses(ForecastSeries series, List<String> losses) {
        for (Entry entry : chances) {
            Instant middle =
                    entry.from().plus(Duration.between(entry.from(), entry.to()).dividedBy(2));
            boolean found = series.rain().probabilities().stream()
                    .anyMatch(c -> c.window().contains(middle)
                            && Math.abs(c.probability() * 100 - entry.value()) < 1e-6);
            if (!found && middle.isAfter(series.hourly().start())) {
                losses.add("chance of rain at " + middle + " is not " + entry.value());
                return;
            }
        }
    }
}
