package rainward.cycle.ground;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import rainward.farm.FieldCase;
import rainward.farm.Machine;
import rainward.farm.Mix;
import rainward.farm.Recipe;
import rainward.farm.Window;
import rainward.queue.pace.StoppedHours;
import rainward.soil.SoilRun;
import rainward.soil.column.SoilColumn;
import rainward.stand.SeedPlacement;
import rainward.stand.SeedingHours;
import rainward.stand.StandCase;
import rainward.stand.StandOutlook;
import rainward.stand.model.StandModel;
import rainward.weather.past.ObservedWeather;
import rainward.weather.trace.Traces;

/**
 * What the stand model says of a field that is seeded, under the weather that has come since: the
 * same model as ahead, on one trace, the true one.
 */
public final class Hindsight {

    private final GroundMemory memory;

    /**
     * Looks back.
     *
     * @param memory of the ground under the weather that it will be asked about
     */
    public Hindsight(GroundMemory memory) {
        this.memory = memory;
    }

    /** Looks back once. */
    public static Hindsight plain() {
        return new Hindsight(GroundMemory.none());
    }

    /**
     * A seeding to look back on.
     *
     * @param item the field, with what was done to it
     * @param recipe its chain of stages
     * @param mix that is in the ground
     * @param seededAt when
     */
    public record Seeding(FieldCase item, Recipe recipe, Mix mix, Instant seededAt) {}

    /**
     * The hours in which a field truly could not be worked, by the rules of the planner: its bed as
     * it lies once it is tilled.
     *
     * @param item the field, untouched
     * @param recipe its chain of stages
     * @param weather that came, from well before the span
     * @param span full hours that are judged
     * @param heaviest machine that must be carried
     */
    public StoppedHours stopped(
            FieldCase item,
            Recipe recipe,
            ObservedWeather weather,
            Window span,
            Machine.MassClass heaviest) {
        GroundPast ground = new GroundPast(
                item,
                Optional.of(recipe),
                Stretch.of(weather, weather.air().start(), span.from()),
                List.of());
        Traces traces = Stretch.trace(Stretch.of(weather, span.from(), span.to()));
        SoilRun run = new SoilColumn(ground.soilAtSeeding(true))
                .run(ground.stateNow(memory), traces, List.of(2.0), heaviest)
                .get(0);
        return StoppedHours.of(recipe, traces, run, span, StoppedHours.Caution.USUAL);
    }

    /**
     * What became of it so far.
     *
     * @param seeding to look back on
     * @param weather that came, from well before the seeding
     * @param zone of the farm's days
     * @return one seeding hour; empty where the weather does not reach a step of the model past it
     */
    public Optional<StandOutlook> of(Seeding seeding, ObservedWeather weather, ZoneId zone) {
        return outlook(seeding, weather, Optional.empty(), StandModel.usual(), zone);
    }

    /**
     * What became of it, and what may still become of it.
     *
     * @param seeding to look back on
     * @param weather that came, from well before the seeding
     * @param ahead courses of the weather from the end of that on, if there is a forecast
     * @param model that is asked
     * @param zone of the farm's days
     * @return one seeding hour; empty where the weather does not reach a step of the model past it
     */
    public Optional<StandOutlook> outlook(
            Seeding seeding,
            ObservedWeather weather,
            Optional<Traces> ahead,
            StandModel model,
            ZoneId zone) {
        Instant hour = seeding.seededAt().truncatedTo(ChronoUnit.HOURS);
        Instant end = weather.air().end();
        Duration least = Duration.ofHours(ahead.isPresent() ? 1 : model.stepHours());
        if (!hour.isBefore(end.minus(least)) || !hour.isAfter(weather.air().start())) {
            return Optional.empty();
        }
        GroundPast ground = new GroundPast(
                seeding.item(),
                Optional.of(seeding.recipe()),
                Stretch.of(weather, weather.air().start(), hour),
                List.of());
        BedToCome bed = BedToCome.of(seeding.item().field(), seeding.recipe());
        ObservedWeather came = Stretch.of(weather, hour, end);
        Traces traces =
                ahead.map(next -> Stretch.traces(came, next)).orElseGet(() -> Stretch.trace(came));
        SoilRun run = new SoilColumn(ground.soilAtSeeding(bed.conditions().firmed()))
                .run(
                        ground.stateNow(memory),
                        traces,
                        List.of(SeedPlacement.depthCm(seeding.mix(), bed.method())),
                        Machine.MassClass.MEDIUM)
                .get(0);
        return Optional.of(model.outlook(new StandCase(
                seeding.mix(), bed.conditions(), run, traces, new SeedingHours(hour, 1, zone))));
    }
}
