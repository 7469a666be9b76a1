package rainward.cycle;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import rainward.cycle.ground.BedToCome;
import rainward.cycle.ground.GroundEvent;
import rainward.cycle.ground.GroundMemory;
import rainward.cycle.ground.GroundPast;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.Machine;
import rainward.farm.Mix;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.queue.pace.StoppedHours;
import rainward.soil.FieldSoil;
import rainward.soil.SoilRun;
import rainward.soil.SoilState;
import rainward.soil.column.SoilColumn;
import rainward.stand.SeedPlacement;
import rainward.stand.SeedingHours;
import rainward.stand.StandCase;
import rainward.stand.StandOutlook;
import rainward.stand.model.StandModel;
import rainward.weather.trace.Foreseen;
import rainward.weather.trace.Traces;

/**
 * Soil and stand of one field on all traces.
 *
 * @param item the field
 * @param recipe its chain of stages
 * @param traces weather of its property
 * @param soil on every trace at the depth of the wanted mix
 * @param questions of the stand model, one a mix, the wanted one first
 * @param stands its answers
 * @param stopped hours in which work must not go on
 */
record FieldReckoning(
        FieldCase item,
        Recipe recipe,
        Traces traces,
        SoilRun soil,
        List<StandCase> questions,
        List<StandOutlook> stands,
        StoppedHours stopped) {

    FieldReckoning {
        questions = List.copyOf(questions);
        stands = List.copyOf(stands);
    }

    /** Reckons one field. */
    static FieldReckoning of(
            FieldCase item,
            Recipe recipe,
            Foreseen weather,
            CycleInput input,
            GroundMemory memory) {
        Traces traces = weather.traces();
        Field field = item.field();
        List<Mix> mixes = input.roster().mixesOf(field);
        BedToCome bed = BedToCome.of(field, recipe);
        List<Double> depths =
                mixes.stream().map(m -> SeedPlacement.depthCm(m, bed.method())).toList();
        GroundPast past = new GroundPast(
                item,
                Optional.of(recipe),
                weatherOf(field, input).past().weather(),
                input.memory().words().getOrDefault(field.name(), List.of()));
        FieldSoil soil = past.soilAtSeeding(bed.conditions().firmed());
        SoilColumn.Runs soils = new SoilColumn(soil)
                .run(atSeeding(past, soil, memory), weather, depths, heaviest(input));
        List<SoilRun> runs = soils.ahead();
        SeedingHours hours = new SeedingHours(traces.start(), CycleInput.PLAN_HOURS, input.zone());
        List<StandCase> questions = IntStream.range(0, mixes.size())
                .mapToObj(m -> new StandCase(
                        mixes.get(m),
                        bed.conditions(),
                        runs.get(m),
                        traces,
                        hours,
                        weather.later()
                                .map(later -> new StandCase.Later(
                                        soils.later().get(m), later, soils.courseOf()))))
                .toList();
        StandModel model = StandModel.usual();
        StoppedHours stopped = new AlertStops(weatherOf(field, input).alerts(), input.planHorizon())
                .beside(StoppedHours.of(
                        recipe, traces, runs.get(0), input.planHorizon(), caution(input)));
        return new FieldReckoning(
                item,
                recipe,
                traces,
                runs.get(0),
                questions,
                questions.stream().map(model::outlook).toList(),
                stopped);
    }

    /**
     * The seedbed is run as it will lie when seed goes in. A field that still waits for tillage is
     * mixed now: what matters for its seed is the bed, and tillage comes within days of it.
     */
    private static SoilState atSeeding(GroundPast past, FieldSoil bed, GroundMemory memory) {
        SoilState now = past.stateNow(memory);
        return past.untilled()
                ? new GroundEvent.Worked(now.at(), Operation.TILL).after(now, bed)
                : now;
    }

    private static StoppedHours.Caution caution(CycleInput input) {
        return new StoppedHours.Caution(
                input.rules().workableConfidence(), StoppedHours.Caution.USUAL.fairRainMm());
    }

    /** A field is reckoned only where its property has weather. */
    private static CycleInput.PropertyWeather weatherOf(Field field, CycleInput input) {
        return Objects.requireNonNull(
                input.weather().get(field.property()), "no weather of " + field.property());
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
