package rainward.replay.crew;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import rainward.cycle.Hindsight;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.FieldStatus;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.farm.Property;
import rainward.farm.Window;
import rainward.replay.truth.DrawnForecasts;
import rainward.replay.truth.TrueWeather;

/** One season as it truly goes: weather, ground that stops work, breakdowns, forecasts. */
public final class World {

    private final Scene scene;
    private final Window season;
    private final TrueWeather weather;
    private final DrawnForecasts forecasts;
    private final Luck luck;
    private final Map<String, Map<Operation, BitSet>> stopped = new HashMap<>();

    /**
     * Builds it.
     *
     * @param scene crew and fields, laid around the station
     * @param weather true at their properties, from two months before the season to weeks after it
     * @param start first day
     * @param days of the season
     * @param seed of forecasts and luck
     */
    public World(Scene scene, TrueWeather weather, Span span, long seed) {
        this.scene = scene;
        this.weather = weather;
        Instant from =
                span.start().atTime(5, 0).atZone(scene.roster().crew().zone()).toInstant();
        this.season = new Window(from, from.plus(Duration.ofDays(span.days())));
        this.forecasts = new DrawnForecasts(weather, scene.roster().crew().zone(), seed);
        this.luck = new Luck(scene.roster().crew().machines(), season, seed);
        for (Field field : scene.fields()) {
            stopped.put(field.name(), ground(field));
        }
    }

    /**
     * Days of a season.
     *
     * @param start first day
     * @param days how many
     */
    public record Span(LocalDate start, int days) {}

    private Map<Operation, BitSet> ground(Field field) {
        return scene.roster()
                .recipeOf(field)
                .map(recipe -> Hindsight.stopped(
                                new FieldCase(field, FieldStatus.UNTOUCHED),
                                recipe,
                                weather.at(field.property()),
                                season,
                                Machine.MassClass.HEAVY)
                        .stopped())
                .orElse(Map.of());
    }

    public Scene scene() {
        return scene;
    }

    Property property(String name) {
        return Optional.ofNullable(scene.roster().properties().get(name)).orElseThrow();
    }

    public Window season() {
        return season;
    }

    public TrueWeather weather() {
        return weather;
    }

    DrawnForecasts forecasts() {
        return forecasts;
    }

    Luck luck() {
        return luck;
    }

    /** True where rain, wind or wet ground stops an operation on a field in this hour. */
    boolean stops(String field, Operation operation, Instant now) {
        int hour = (int) Duration.between(season.from(), now).toHours();
        return Optional.ofNullable(stopped.get(field))
                .map(hours -> hours.get(operation))
                .map(hours -> hours.get(hour))
                .orElse(false);
    }
}
