package rainward.replay.crew;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import rainward.cycle.Cycle;
import rainward.cycle.CycleInput;
import rainward.cycle.Stretch;
import rainward.farm.Property;
import rainward.queue.problem.Plan;
import rainward.queue.search.Effort;
import rainward.weather.past.ObservedWeather;
import rainward.weather.past.PastWeather;
import rainward.weather.source.ForecastSeries;
import rainward.window.WindowRecord;

/** Rounds of the program's own reckoning, on what could be known at a moment of the season. */
final class Rounds {

    private static final Duration RUN_UP = Duration.ofDays(60);

    private final World world;
    private final Map<String, ForecastSeries> drawn = new HashMap<>();

    Rounds(World world) {
        this.world = world;
    }

    /** The newest forecast for a property: that of 5 o'clock. */
    ForecastSeries forecast(String property, Instant now) {
        LocalDate day = LocalDate.ofInstant(
                now.minus(Duration.ofHours(5)), world.scene().roster().crew().zone());
        Property place = world.property(property);
        return drawn.computeIfAbsent(property + day, key -> world.forecasts().of(place, day));
    }

    /**
     * What is asked.
     *
     * @param now the moment
     * @param fields as they stand
     * @param lastOrder that the crew has
     */
    record Asked(Instant now, List<FieldWork> fields, Optional<Plan> lastOrder) {}

    private CycleInput input(Asked asked, boolean patient) {
        Instant hour = asked.now().truncatedTo(ChronoUnit.HOURS);
        BitSet timed = new BitSet();
        timed.set(0, (int) RUN_UP.toHours());
        Map<String, CycleInput.PropertyWeather> weather = new TreeMap<>();
        for (String property : world.weather().byProperty().keySet()) {
            ObservedWeather past =
                    Stretch.of(world.weather().at(property), hour.minus(RUN_UP), hour);
            weather.put(
                    property,
                    new CycleInput.PropertyWeather(
                            Optional.of(forecast(property, asked.now())),
                            new PastWeather(past, List.of(), timed, List.of())));
        }
        return new CycleInput(
                asked.now(),
                world.scene().roster(),
                asked.fields().stream().map(FieldWork::asCase).toList(),
                weather,
                rules(patient),
                new CycleInput.Memory(asked.lastOrder(), WindowRecord.NOTHING, Set.of(), Map.of()));
    }

    private CycleInput.Rules rules(boolean patient) {
        CycleInput.Rules rules = world.scene().rules();
        return new CycleInput.Rules(
                new CycleInput.Draw(
                        world.forecasts().usual(),
                        rules.draw().traces(),
                        rules.draw().seed()),
                rules.workableConfidence(),
                rules.prices(),
                rules.windows(),
                rules.units(),
                patient);
    }

    /** Readiness of each waiting field, 0 to 100. */
    Map<String, Double> readiness(Instant now, List<FieldWork> fields) {
        Map<String, Double> scores = new HashMap<>();
        Cycle.run(input(new Asked(now, fields, Optional.empty()), false), Effort.tries(1, 1))
                .outlook()
                .fields()
                .forEach(f -> scores.put(
                        f.item().field().name(), (double) f.readiness().score()));
        return scores;
    }

    /** The order by a policy that plans. */
    Plan plan(Policy policy, Asked asked, long tries) {
        CycleInput input = input(asked, policy.patient());
        Effort effort = Effort.tries(1, tries);
        Cycle.Result result = policy.knowing()
                ? Cycle.runKnowing(input, world.weather().byProperty(), effort)
                : Cycle.run(input, effort);
        return result.outlook().plan();
    }
}
