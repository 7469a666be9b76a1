package rainward.feed.point;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.farm.Window;
import rainward.feed.hourly.AirLayers;
import rainward.feed.hourly.RainLayers;
import rainward.feed.hourly.ReadForecast;
import rainward.feed.reading.Json;
import rainward.feed.reading.Moments;
import rainward.feed.reading.Notes;
import rainward.feed.reading.Quantity;
import rainward.feed.reading.Spans;
import rainward.feed.reading.Spell;
import rainward.feed.reading.Unreadable;
import rainward.weather.source.LastGoodCopies.Copy;

/**
 * Reads Locationforecast 2.0, compact or complete. Values of the air hold at instants; rain falls
 * in the one or six hours after its time. The two overlap, so six hours count only where no single
 * hours are given.
 */
public final class MetForecast {

    private final JsonNode units;
    private final Notes notes = new Notes();
    private final Moments temp = new Moments();
    private final Moments dew = new Moments();
    private final Moments humidity = new Moments();
    private final Moments wind = new Moments();
    private final Moments sky = new Moments();
    private final List<Spell> amounts = new ArrayList<>();
    private final List<Spell> chances = new ArrayList<>();
    private final List<Spell> longAmounts = new ArrayList<>();
    private final List<Spell> longChances = new ArrayList<>();

    private MetForecast(JsonNode units) {
        this.units = units;
    }

    public static ReadForecast read(Copy copy) throws Unreadable {
        JsonNode properties = Json.read(copy.body()).path("properties");
        JsonNode steps = properties.path("timeseries");
        if (!steps.isArray() || steps.isEmpty()) {
            throw new Unreadable("sent a forecast without time steps");
        }
        MetForecast forecast = new MetForecast(properties.path("meta").path("units"));
        for (JsonNode step : steps) {
            forecast.step(step);
        }
        Optional<Instant> updated =
                Spans.time(properties.path("meta").path("updated_at").asText());
        if (updated.isEmpty()) {
            forecast.notes.say("updated_at: not readable, the time of the answer stands in for it");
        }
        return forecast.all(updated.orElse(copy.times().fetchedAt()));
    }

    private ReadForecast all(Instant issuedAt) throws Unreadable {
        AirLayers air = new AirLayers(
                temp.hours(), dew.hours(), humidity.hours(), wind.hours(), sky.hours());
        if (air.airTempC().isEmpty()) {
            throw new Unreadable("sent a forecast without a readable temperature");
        }
        List<Spell> rain =
                Spell.inOrder("precipitation_amount", joined(amounts, longAmounts), notes);
        List<Spell> chance =
                Spell.inOrder("probability_of_precipitation", joined(chances, longChances), notes);
        if (chance.isEmpty()) {
            notes.say("rain chance: not given here by this service, reckoned from its amounts");
        }
        return new ReadForecast(issuedAt, air, new RainLayers(rain, chance), notes.all());
    }

    private void step(JsonNode step) {
        String text = step.path("time").asText("");
        Optional<Instant> time = Spans.time(text);
        if (time.isEmpty()) {
            notes.leftOut("timeseries", "'" + Json.cut(text) + "' is not a time");
            return;
        }
        JsonNode now = step.path("data").path("instant").path("details");
        moment(temp, now, new Item("air_temperature", Quantity.AIR_TEMP, time.get()));
        moment(dew, now, new Item("dew_point_temperature", Quantity.DEW_POINT, time.get()));
        moment(humidity, now, new Item("relative_humidity", Quantity.SHARE, time.get()));
        moment(wind, now, new Item("wind_speed", Quantity.WIND, time.get()));
        moment(sky, now, new Item("cloud_area_fraction", Quantity.SHARE, time.get()));
        ahead(step, new Ahead(time.get(), 1), amounts, chances);
        ahead(step, new Ahead(time.get(), 6), longAmounts, longChances);
    }

    /** A value to look for, and the time it stands at. */
    private record Item(String name, Quantity quantity, Instant at) {}

    private void moment(Moments moments, JsonNode details, Item item) {
        value(details, item).ifPresent(v -> moments.put(item.at(), v));
    }

    /** Hours after a time. */
    private record Ahead(Instant at, int hours) {

        JsonNode in(JsonNode step) {
            return step.path("data").path("next_" + hours + "_hours").path("details");
        }

        Window window() {
            return new Window(at, at.plus(Duration.ofHours(hours)));
        }
    }

    private void ahead(JsonNode step, Ahead ahead, List<Spell> amounts, List<Spell> chances) {
        JsonNode details = ahead.in(step);
        Window window = ahead.window();
        value(details, new Item("precipitation_amount", Quantity.RAIN, ahead.at()))
                .ifPresent(v -> amounts.add(new Spell(window, v)));
        value(details, new Item("probability_of_precipitation", Quantity.SHARE, ahead.at()))
                .ifPresent(v -> chances.add(new Spell(window, v)));
    }

    /** A service may leave any of them out; what it gives has to be good. */
    private OptionalDouble value(JsonNode details, Item item) {
        JsonNode node = details.path(item.name());
        if (Json.silent(node)) {
            return OptionalDouble.empty();
        }
        Quantity.Said said = item.quantity().read(node, units.path(item.name()).asText(""));
        if (said.si().isEmpty()) {
            notes.leftOut(item.name(), said.whyNot() + " at " + item.at());
        }
        return said.si();
    }

    /** Single hours, and of the six-hour stretches those that touch none and do not overlap. */
    private static List<Spell> joined(List<Spell> hours, List<Spell> stretches) {
        List<Spell> all = new ArrayList<>(hours);
        for (Spell stretch : stretches) {
            boolean free = all.stream().noneMatch(s -> s.window().overlaps(stretch.window()));
            if (free) {
                all.add(stretch);
            }
        }
        return all;
    }
}
