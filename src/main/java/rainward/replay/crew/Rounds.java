package rainward.replay.crew;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rainward.cycle.Cycle;
import rainward.cycle.CycleInput;
import rainward.cycle.ground.Stretch;
import rainward.farm.FieldStatus;
import rainward.farm.GeoPoint;
import rainward.queue.problem.InBoxes;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;
import rainward.queue.problem.Standing;
import rainward.weather.past.ObservedWeather;
import rainward.weather.past.PastWeather;
import rainward.window.WindowRecord;

/** Rounds of the program's own reckoning, on what could be known at a moment of the season. */
final class Rounds {

    /** As far as courses of the weather reach in every round. */
    private static final Duration TOLD_AHEAD = Duration.ofDays(10);

    private final World world;

    Rounds(World world) {
        this.world = world;
    }

    /**
     * What is asked.
     *
     * @param now the moment
     * @param fields as they stand
     * @param lastOrder that the crew has
     */
    record Asked(Instant now, List<FieldWork> fields, Optional<Plan> lastOrder) {}

    private CycleInput input(Asked asked, boolean keepsSeed) {
        Instant hour = asked.now().truncatedTo(ChronoUnit.HOURS);
        Map<String, CycleInput.PropertyWeather> weather = new TreeMap<>();
        world.weather().byProperty().forEach((property, whole) -> {
            ObservedWeather past = Stretch.of(whole, whole.air().start(), hour);
            BitSet timed = new BitSet();
            timed.set(0, past.air().hours());
            weather.put(
                    property,
                    new CycleInput.PropertyWeather(
                            Optional.of(world.forecast(property, asked.now())),
                            new PastWeather(past, List.of(), timed, List.of())));
        });
        return new CycleInput(
                asked.now(),
                world.scene().roster(),
                asked.fields().stream().map(FieldWork::asCase).toList(),
                weather,
                rules(keepsSeed),
                new CycleInput.Memory(asked.lastOrder(), WindowRecord.NOTHING, Set.of(), Map.of()));
    }

    private CycleInput.Rules rules(boolean keepsSeed) {
        CycleInput.Rules rules = world.scene().rules();
        return new CycleInput.Rules(
                new CycleInput.Draw(
                        world.usual(), rules.draw().traces(), rules.draw().seed()),
                rules.workableConfidence(),
                rules.prices(),
                rules.windows(),
                rules.units(),
                keepsSeed);
    }

    /** Readiness of each waiting field, 0 to 100. */
    Map<String, Double> readiness(Instant now, List<FieldWork> fields) {
        Map<String, Double> scores = new HashMap<>();
        Cycle.of(input(new Asked(now, fields, Optional.empty()), false), world.ground())
                .ready()
                .forEach(f -> scores.put(
                        f.item().field().name(), (double) f.readiness().score()));
        return scores;
    }

    /** What a policy that plans has to find an order for. */
    PlanProblem problem(Policy policy, Asked asked) {
        CycleInput input = input(asked, policy.keepsSeed());
        Cycle cycle = policy.knowing()
                ? Cycle.knowing(input, known(policy, asked.now()), world.ground())
                : Cycle.of(input, world.ground());
        return cycle.problem().withStanding(standing(asked), inBoxes(asked));
    }

    /** A machine that left a field half done is still there. */
    private Map<String, GeoPoint> standing(Asked asked) {
        return Standing.recorded(
                asked.fields().stream().map(FieldWork::visited).toList(),
                world.scene().roster(),
                asked.lastOrder(),
                asked.now());
    }

    private Map<String, String> inBoxes(Asked asked) {
        return InBoxes.recorded(
                asked.fields().stream().map(FieldWork::visited).toList(),
                world.scene().roster(),
                asked.lastOrder(),
                asked.now());
    }

    /** The weather to come, ten days of it or all. */
    private Map<String, ObservedWeather> known(Policy policy, Instant now) {
        Instant hour = now.truncatedTo(ChronoUnit.HOURS);
        Map<String, ObservedWeather> known = new TreeMap<>();
        world.weather().byProperty().forEach((property, whole) -> {
            Instant end = whole.air().end();
            Instant told = hour.plus(TOLD_AHEAD);
            boolean all = policy == Policy.TOLD_THE_SEASON || told.isAfter(end);
            known.put(property, Stretch.of(whole, hour, all ? end : told));
        });
        return known;
    }

    /**
     * The same with the work done since. Weather and soil stay as they were reckoned: within half a
     * day no forecast is issued that would change them.
     */
    PlanProblem since(PlanProblem before, Asked asked) {
        Map<String, FieldStatus> stands = asked.fields().stream()
                .collect(Collectors.toMap(f -> f.field().name(), f -> f.asCase().status()));
        return new PlanProblem(
                asked.now(),
                before.horizon(),
                before.crew(),
                before.jobs().stream()
                        .map(job -> job.with(
                                Optional.ofNullable(stands.get(job.name())).orElseThrow()))
                        .filter(job -> job.field().status().waiting())
                        .toList(),
                before.prices(),
                asked.lastOrder(),
                before.stockHa(),
                standing(asked),
                inBoxes(asked));
    }
}
