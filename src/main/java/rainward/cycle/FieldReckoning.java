package rainward.cycle;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.Machine;
import rainward.farm.Mix;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.farm.SeedingMethod;
import rainward.queue.pace.StoppedHours;
import rainward.readiness.Readiness;
import rainward.soil.FieldSoil;
import rainward.soil.SoilRun;
import rainward.soil.SoilState;
import rainward.soil.column.SoilColumn;
import rainward.stand.SeedPlacement;
import rainward.stand.SeedingConditions;
import rainward.stand.SeedingHours;
import rainward.stand.StandCase;
import rainward.stand.StandOutlook;
import rainward.stand.model.StandModel;
import rainward.weather.trace.Traces;

/**
 * Soil and stand of one field on all traces.
 *
 * @param item the field
 * @param recipe its chain of stages
 * @param traces weather of its property
 * @param soil on every trace at the depth of the wanted mix
 * @param stands one a mix, the wanted one first
 * @param stopped hours in which work must not go on
 * @param readiness of the field now
 */
record FieldReckoning(
        FieldCase item,
        Recipe recipe,
        Traces traces,
        SoilRun soil,
        List<StandOutlook> stands,
        StoppedHours stopped,
        Readiness readiness) {

    FieldReckoning {
        stands = List.copyOf(stands);
    }

    /** Reckons one field. */
    static FieldReckoning of(FieldCase item, Recipe recipe, Traces traces, CycleInput input) {
        Field field = item.field();
        List<Mix> mixes = input.roster().mixesOf(field);
        SeedingMethod method = recipe.seeding().limits().method().orElse(SeedingMethod.DRILLED);
        SeedingConditions conditions = conditions(field, recipe, method);
        List<Double> depths =
                mixes.stream().map(m -> SeedPlacement.depthCm(m, method)).toList();
        List<SoilRun> runs = soilRuns(item, recipe, traces, depths, input);
        SeedingHours hours = new SeedingHours(traces.start(), CycleInput.PLAN_HOURS, input.zone());
        StandModel model = StandModel.usual();
        List<StandCase> questions = IntStream.range(0, mixes.size())
                .mapToObj(m -> new StandCase(mixes.get(m), conditions, runs.get(m), traces, hours))
                .toList();
        List<StandOutlook> stands = questions.stream().map(model::outlook).toList();
        StoppedHours stopped = new AlertStops(weatherOf(field, input).alerts(), input.planHorizon())
                .beside(StoppedHours.of(
                        recipe, traces, runs.get(0), input.planHorizon(), caution(input)));
        return new FieldReckoning(
                item,
                recipe,
                traces,
                runs.get(0),
                stands,
                stopped,
                new Readying(input).of(item, questions, stands));
    }

    private static StoppedHours.Caution caution(CycleInput input) {
        return new StoppedHours.Caution(
                input.rules().workableConfidence(), StoppedHours.Caution.USUAL.fairRainMm());
    }

    /**
     * The seedbed is run as it will lie when seed goes in. A field that still waits for tillage is
     * mixed now: what matters for its seed is the bed, and tillage comes within days of it.
     */
    private static List<SoilRun> soilRuns(
            FieldCase item, Recipe recipe, Traces traces, List<Double> depths, CycleInput input) {
        Field field = item.field();
        GroundPast past = new GroundPast(
                item,
                Optional.of(recipe),
                weatherOf(field, input).past().weather(),
                input.memory().words().getOrDefault(field.name(), List.of()));
        FieldSoil bed = past.soilAtSeeding(firmed(recipe));
        SoilState now = past.stateNow();
        if (past.untilled()) {
            now = new GroundEvent.Worked(now.at(), Operation.TILL).after(now, bed);
        }
        return new SoilColumn(bed).run(now, traces, depths, heaviest(input));
    }

    /** A field is reckoned only where its property has weather. */
    private static CycleInput.PropertyWeather weatherOf(Field field, CycleInput input) {
        return Objects.requireNonNull(
                input.weather().get(field.property()), "no weather of " + field.property());
    }

    static SeedingConditions conditions(Field field, Recipe recipe, SeedingMethod method) {
        return new SeedingConditions(
                method,
                field.ground().texture(),
                field.ground().slopeFraction(),
                firmed(recipe),
                0);
    }

    private static boolean firmed(Recipe recipe) {
        return recipe.seeding().limits().method().equals(Optional.of(SeedingMethod.ROLLED))
                || recipe.stages().stream().anyMatch(s -> s.operation() == Operation.FIRM);
    }

    /** The heaviest machine that tills or seeds decides what the ground must carry. */
    private static Machine.MassClass heaviest(CycleInput input) {
        return input.roster().crew().machines().stream()
                .filter(m -> m.operations().stream().anyMatch(GroundEvent.Worked::touchesTheTop))
                .map(Machine::massClass)
                .max(Comparator.naturalOrder())
                .orElse(Machine.MassClass.MEDIUM);
    }

    /** How the ground is in the first hour, middle of the traces. */
    Outlook.Seedbed seedbed() {
        double water = median(soil.seedZone().waterFraction()[0]);
        double potential = median(soil.seedZone().potentialMpa()[0]);
        int workable = stopped.unworkable().nextClearBit(0);
        Optional<Instant> workableFrom = workable >= CycleInput.PLAN_HOURS
                ? Optional.empty()
                : Optional.of(traces.start().plus(Duration.ofHours(workable)));
        return new Outlook.Seedbed(
                water, median(soil.seedZone().tempC()[0]), wetness(potential), workableFrom);
    }

    /**
     * Words for a potential: wilting point is -1.5 MPa and field capacity -0.033 MPa by definition
     * (Saxton and Rawls 2006); the other two steps are common practice, no source.
     */
    private static Outlook.Seedbed.Wetness wetness(double potentialMpa) {
        if (potentialMpa < -1.5) {
            return Outlook.Seedbed.Wetness.DUST_DRY;
        }
        if (potentialMpa < -0.3) {
            return Outlook.Seedbed.Wetness.DRY;
        }
        if (potentialMpa < -0.033) {
            return Outlook.Seedbed.Wetness.MOIST;
        }
        return potentialMpa < -0.01 ? Outlook.Seedbed.Wetness.WET : Outlook.Seedbed.Wetness.SOAKED;
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
