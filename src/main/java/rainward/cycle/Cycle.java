package rainward.cycle;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.Property;
import rainward.farm.Season;
import rainward.queue.plan.Planner;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;
import rainward.queue.search.Effort;
import rainward.stand.StandOutlook;
import rainward.stand.StandRules;
import rainward.weather.past.ObservedWeather;
import rainward.weather.source.ForecastSeries;
import rainward.weather.trace.PointForecast;
import rainward.weather.trace.PointTraces;
import rainward.weather.trace.TraceMaker;
import rainward.weather.trace.TraceSettings;
import rainward.window.PropertyWatch;
import rainward.window.WindowDecider;
import rainward.window.WindowDetector;

/** One round of reckoning: from forecasts to an order, and nothing else. */
public final class Cycle {

    /** What a stand of the next mix is worth to somebody who wished for the one before; chosen. */
    private static final double SECOND_WISH_SHARE = 0.9;

    private final CycleInput input;
    private final Map<String, PointTraces> drawn;
    private final List<FieldReckoning> reckoned;

    private Cycle(CycleInput input, Map<String, PointTraces> drawn) {
        this.input = input;
        this.drawn = drawn;
        // Fields do not touch each other, so both cores of an office PC reckon them at once.
        this.reckoned = input.fields().parallelStream()
                .filter(item -> item.status().waiting())
                .flatMap(item -> reckon(item).stream())
                .toList();
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
     * Runs a round.
     *
     * @param input fields, weather, rules and memory
     * @param effort of the planner; equal tries give equal results
     */
    public static Result run(CycleInput input, Effort effort) {
        return new Cycle(input, drawn(input)).result(effort);
    }

    /**
     * Runs a round for somebody who knows the weather to come: what nobody could do better.
     *
     * @param input as ever; its forecasts only say for which properties there is one
     * @param future by property, from the round's hour on as far as traces reach
     * @param effort of the planner
     */
    public static Result runKnowing(
            CycleInput input, Map<String, ObservedWeather> future, Effort effort) {
        Map<String, PointTraces> told = new TreeMap<>(drawn(input));
        told.replaceAll((property, made) -> Optional.ofNullable(future.get(property))
                .map(known -> new PointTraces(
                        Stretch.trace(Stretch.of(
                                known,
                                input.traceHorizon().from(),
                                input.traceHorizon().to())),
                        made.marginals(),
                        made.basis()))
                .orElse(made));
        return new Cycle(input, told).result(effort);
    }

    /** Traces by property; properties without a forecast have none. */
    static Map<String, PointTraces> drawn(CycleInput input) {
        Map<String, PointForecast> known = new TreeMap<>();
        input.weather()
                .forEach((property, weather) ->
                        weather.ahead().ifPresent(f -> known.put(property, f)));
        CycleInput.Draw draw = input.rules().draw();
        List<PointTraces> made = TraceMaker.withEnsembles(
                List.copyOf(known.values()),
                new TraceSettings(draw.traces(), draw.seed(), input.traceHorizon()),
                draw.climate());
        Map<String, PointTraces> byProperty = new TreeMap<>();
        int next = 0;
        for (String property : known.keySet()) {
            byProperty.put(property, made.get(next++));
        }
        return byProperty;
    }

    /** Empty where the field's property has no forecast, or its recipe or mixes are unknown. */
    private Optional<FieldReckoning> reckon(FieldCase item) {
        Field field = item.field();
        if (input.roster().mixesOf(field).isEmpty()) {
            return Optional.empty();
        }
        return input.roster()
                .recipeOf(field)
                .flatMap(recipe -> Optional.ofNullable(drawn.get(field.property()))
                        .map(weather -> FieldReckoning.of(item, recipe, weather.traces(), input)));
    }

    private Result result(Effort effort) {
        PlanProblem problem = problem();
        Plan plan = Planner.plan(problem, effort);
        WindowDecider.Decided decided = WindowDecider.decide(
                input.memory().windows(),
                WindowDetector.detect(
                        watches(),
                        plan,
                        input.roster().crew(),
                        input.rules().windows().watch(),
                        input.asOf()),
                input.rules().windows(),
                input.asOf());
        Outlook outlook = new Outlook(
                input.asOf(),
                stamps(),
                fields(),
                drawn.entrySet().stream()
                        .collect(Collectors.toMap(
                                Map.Entry::getKey,
                                e -> RainPictures.of(e.getValue(), input.zone()))),
                input.weather().entrySet().stream()
                        .collect(Collectors.toMap(
                                Map.Entry::getKey, e -> e.getValue().past().days())),
                plan,
                decided.next().open().stream().map(open -> open.latest()).toList());
        return new Result(outlook, problem, decided);
    }

    private PlanProblem problem() {
        return new PlanProblem(
                input.asOf(),
                input.planHorizon(),
                input.roster().crew(),
                reckoned.stream().map(this::job).toList(),
                input.rules().prices(),
                input.memory().lastOrder());
    }

    private Job job(FieldReckoning field) {
        Property property = input.roster().properties().get(field.item().field().property());
        List<StandOutlook> stands = field.stands();
        List<Job.MixOption> options = IntStream.range(0, stands.size())
                .filter(wish ->
                        !input.memory().outOfStock().contains(stands.get(wish).mix()))
                .mapToObj(wish -> option(stands.get(wish), wish))
                .toList();
        return new Job(
                field.item(),
                field.recipe(),
                property == null ? field.item().field().place() : property.place(),
                options,
                field.stopped().stopped(),
                field.stopped().firmedByRain());
    }

    /**
     * A mix takes the place of one that is wished for more only where it brings clearly more.
     *
     * @param wish place in the order of wish, from 0
     */
    private Job.MixOption option(StandOutlook stand, int wish) {
        double share = Math.pow(SECOND_WISH_SHARE, wish);
        double[] worth = input.rules().patient() ? gains(stand) : stand.worth();
        return new Job.MixOption(
                stand.mix(),
                stand.chance(),
                Arrays.stream(worth).map(w -> w * share).toArray());
    }

    /** What seeding gains over waiting, by seeding hour. */
    private double[] gains(StandOutlook stand) {
        Patience patience = new Patience(StandRules.DEFAULT.beyond());
        Season season = Optional.ofNullable(input.roster().mixes().get(stand.mix()))
                .orElseThrow()
                .season();
        double[] gains = stand.worth().clone();
        LocalDate day = LocalDate.MIN;
        double waiting = 0;
        for (int h = 0; h < gains.length; h++) {
            LocalDate today =
                    LocalDate.ofInstant(stand.start().plusSeconds(3600L * h), input.zone());
            waiting = today.equals(day) ? waiting : patience.worth(season, today);
            day = today;
            gains[h] = patience.gain(gains[h], waiting);
        }
        return gains;
    }

    private List<PropertyWatch> watches() {
        Map<String, List<FieldReckoning>> byProperty = reckoned.stream()
                .collect(Collectors.groupingBy(
                        f -> f.item().field().property(), TreeMap::new, Collectors.toList()));
        List<PropertyWatch> watches = new ArrayList<>();
        byProperty.forEach((name, fields) -> Optional.ofNullable(
                        input.roster().properties().get(name))
                .ifPresent(property -> watches.add(new PropertyWatch(
                        property,
                        fields.get(0).traces(),
                        fields.stream().map(this::pending).toList()))));
        return watches;
    }

    private PropertyWatch.Pending pending(FieldReckoning reckoning) {
        Field field = reckoning.item().field();
        return new PropertyWatch.Pending(field, input.roster().mixesOf(field).get(0));
    }

    private Map<String, ForecastSeries.Stamp> stamps() {
        Map<String, ForecastSeries.Stamp> stamps = new TreeMap<>();
        input.weather()
                .forEach((property, weather) ->
                        weather.forecast().ifPresent(f -> stamps.put(property, f.stamp())));
        return stamps;
    }

    private List<Outlook.FieldOutlook> fields() {
        Map<String, FieldReckoning> byName = reckoned.stream()
                .collect(Collectors.toMap(f -> f.item().field().name(), Function.identity()));
        Readying readying = new Readying(input);
        return input.fields().stream()
                .map(item -> {
                    Optional<FieldReckoning> known =
                            Optional.ofNullable(byName.get(item.field().name()));
                    return new Outlook.FieldOutlook(
                            item,
                            known.map(FieldReckoning::readiness).orElseGet(() -> readying.of(item)),
                            known.map(FieldReckoning::stands).orElse(List.of()),
                            known.map(FieldReckoning::seedbed));
                })
                .toList();
    }
}
