package rainward.cycle;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import rainward.cycle.ground.GroundMemory;
import rainward.queue.plan.Planner;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;
import rainward.queue.search.Effort;
import rainward.weather.past.ObservedWeather;
import rainward.weather.source.ForecastSeries;
import rainward.weather.trace.Foreseen;
import rainward.weather.trace.PointTraces;
import rainward.window.WindowDecider;
import rainward.window.WindowRecord;

/**
 * One round: weather ahead, soil and stands at one moment. Readiness, an order and windows are
 * reckoned from it when they are asked for, and not before.
 */
public final class Cycle {

    private final CycleInput input;
    private final Map<String, PointTraces> drawn;
    private final List<FieldReckoning> fields;

    private Cycle(CycleInput input, Map<String, PointTraces> drawn, List<FieldReckoning> fields) {
        this.input = input;
        this.drawn = drawn;
        this.fields = fields;
    }

    /** Reckons a round. */
    public static Cycle of(CycleInput input) {
        return of(input, GroundMemory.none());
    }

    /**
     * Reckons one round of many in a season.
     *
     * @param input fields, weather, rules and memory
     * @param memory of the ground under that season's weather
     */
    public static Cycle of(CycleInput input, GroundMemory memory) {
        return of(input, memory, Parts.UNTOLD);
    }

    static Cycle of(CycleInput input, GroundMemory memory, Parts parts) {
        Map<String, PointTraces> drawn = parts.go("traces", () -> Sky.drawn(input));
        Map<String, Foreseen> weather = parts.go("traces", () -> Sky.foreseen(input, drawn));
        Reckoning reckoning = new Reckoning(input, memory);
        return new Cycle(input, drawn, parts.go(Parts.GROUND, () -> reckoning.fields(weather)));
    }

    /**
     * Reckons a round for somebody who knows the weather to come: what nobody could do better.
     *
     * @param input as ever; its forecasts only say for which properties there is one
     * @param future by property, from the round's hour on as far as it is known
     * @param memory of the ground under that weather
     */
    public static Cycle knowing(
            CycleInput input, Map<String, ObservedWeather> future, GroundMemory memory) {
        return new Cycle(
                input, Map.of(), new Reckoning(input, memory).fields(Sky.known(input, future)));
    }

    /**
     * What one round gives.
     *
     * @param outlook for people
     * @param problem that was planned, to explain and to check the plan
     * @param windows what is to be said of storm windows, and remembered
     */
    public record Result(Outlook outlook, PlanProblem problem, WindowDecider.Decided windows) {}

    /**
     * Runs a whole round.
     *
     * @param input fields, weather, rules and memory
     * @param effort of the planner; equal tries give equal results
     */
    public static Result run(CycleInput input, Effort effort) {
        return of(input).whole(effort, Parts.UNTOLD);
    }

    /** The rest of a round. */
    Result whole(Effort effort, Parts parts) {
        PlanProblem problem = parts.go("plan", this::problem);
        Plan plan = parts.go("plan", () -> Planner.plan(problem, effort));
        WindowDecider.Decided windows =
                parts.go("windows", () -> new Watching(input).windows(fields, plan));
        Outlook outlook =
                parts.go("readiness", () -> outlook(plan, windows.next().open()));
        return new Result(outlook, problem, windows);
    }

    List<FieldReckoning> fields() {
        return fields;
    }

    /** Hears of the parts of a round, to measure them. */
    interface Parts {

        /** Soil and stands, field by field. */
        String GROUND = "soil";

        Parts UNTOLD = new Parts() {
            @Override
            public <T> T go(String name, Supplier<T> work) {
                return work.get();
            }
        };

        /** Does a part. */
        <T> T go(String name, Supplier<T> work);
    }

    /** What an order has to be found for. */
    public PlanProblem problem() {
        return new Planning(input).problem(fields);
    }

    /** What there is to be said without a new order: the one given out last stands in for it. */
    public Outlook unordered() {
        Plan.Value nothing = new Plan.Value(0, 0, 0, 0, 0);
        return outlook(
                input.memory()
                        .lastOrder()
                        .orElse(new Plan(input.asOf(), List.of(), List.of(), nothing)),
                input.memory().windows().open());
    }

    private Outlook outlook(Plan plan, List<WindowRecord.Open> open) {
        return new Outlook(
                input.asOf(),
                stamps(),
                ready(),
                drawn.entrySet().stream()
                        .collect(Collectors.toMap(
                                Map.Entry::getKey,
                                e -> RainPictures.of(e.getValue(), input.zone()))),
                input.weather().entrySet().stream()
                        .collect(Collectors.toMap(
                                Map.Entry::getKey, e -> e.getValue().past().days())),
                plan,
                open.stream().map(window -> window.latest()).toList());
    }

    private Map<String, ForecastSeries.Stamp> stamps() {
        Map<String, ForecastSeries.Stamp> stamps = new TreeMap<>();
        input.weather()
                .forEach((property, weather) ->
                        weather.forecast().ifPresent(f -> stamps.put(property, f.stamp())));
        return stamps;
    }

    /** Readiness and stands of every field. */
    public List<Outlook.FieldOutlook> ready() {
        Map<String, FieldReckoning> byName = fields.stream()
                .collect(Collectors.toMap(f -> f.item().field().name(), Function.identity()));
        Readying readying = new Readying(input);
        // Where only one factor is made perfect, the stand is reckoned anew: both cores help.
        return input.fields().parallelStream()
                .map(item -> {
                    Optional<FieldReckoning> known =
                            Optional.ofNullable(byName.get(item.field().name()));
                    return new Outlook.FieldOutlook(
                            item,
                            known.map(readying::of).orElseGet(() -> readying.of(item)),
                            known.map(FieldReckoning::stands).orElse(List.of()),
                            known.map(FieldReckoning::seedbed));
                })
                .toList();
    }
}
