package rainward.replay.crew;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import rainward.cycle.ground.GroundMemory;
import rainward.cycle.ground.Hindsight;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.FieldStatus;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.farm.Property;
import rainward.farm.Window;
import rainward.replay.truth.DrawnForecasts;
import rainward.replay.truth.TrueWeather;
import rainward.weather.climate.Climate;
import rainward.weather.source.ForecastSeries;

/** One season as it truly goes: weather, ground that stops work, breakdowns, forecasts. */
public final class World {

    private final Scene scene;
    private final Window season;
    private final TrueWeather weather;
    private final DrawnForecasts forecasts;
    private final Luck luck;
    private final GroundMemory ground = GroundMemory.ofSeason();
    private final Map<String, Map<Operation, BitSet>> stopped = new HashMap<>();
    private final Map<String, ForecastSeries> issued = new ConcurrentHashMap<>();

    /**
     * Builds it.
     *
     * @param scene crew and fields, laid around the station
     * @param weather true at their properties, from two months before the season to weeks after it
     * @param span its days
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
        Map<Alike, Map<Operation, BitSet>> reckoned = new HashMap<>();
        for (Field field : scene.fields()) {
            Alike alike =
                    new Alike(field.property(), field.ground(), field.wish().recipe());
            stopped.put(field.name(), reckoned.computeIfAbsent(alike, a -> stops(field)));
        }
    }

    /**
     * Days of a season.
     *
     * @param start first day
     * @param days how many
     */
    public record Span(LocalDate start, int days) {}

    /** Fields that the same hours stop. */
    private record Alike(String property, Field.Ground ground, String recipe) {}

    private Map<Operation, BitSet> stops(Field field) {
        return scene.roster()
                .recipeOf(field)
                .map(recipe -> hindsight()
                        .stopped(
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

    /** Looks back on fields under the weather that came. */
    public Hindsight hindsight() {
        return new Hindsight(ground);
    }

    /** What is known of the soil under that weather; it holds for all policies. */
    GroundMemory ground() {
        return ground;
    }

    /** The climate that forecasts fall back on. */
    Climate usual() {
        return forecasts.usual();
    }

    /** The newest forecast for a property: that of 5 o'clock, the same for every policy. */
    ForecastSeries forecast(String property, Instant now) {
        LocalDate day = LocalDate.ofInstant(
                now.minus(Duration.ofHours(5)), scene.roster().crew().zone());
        return issued.computeIfAbsent(property + day, key -> forecasts.of(property(property), day));
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
