package rainward.cycle;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.farm.FieldCase;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.farm.Stage;
import rainward.farm.StageRecord;
import rainward.soil.FieldSoil;
import rainward.soil.SoilState;
import rainward.soil.SurfaceCondition;
import rainward.soil.SurfaceCondition.Tilth;
import rainward.soil.SurfaceCondition.Vegetation;
import rainward.soil.column.SoilColumn;
import rainward.weather.past.ObservedWeather;

/**
 * The ground of one field brought up to now: weeds drink from it until it is tilled, tillage mixes
 * the top, and what somebody saw with their own eyes outranks what was reckoned.
 */
final class GroundPast {

    /**
     * Weeds and what the failed crop left stand on a field that waits: a third of the ground, roots
     * to a foot. Common practice, no source.
     */
    private static final SurfaceCondition UNTILLED =
            new SurfaceCondition(Tilth.SETTLED, 0.1, new Vegetation(0.3, 30));

    private final FieldCase item;
    private final ObservedWeather past;
    private final List<GroundEvent> events;

    GroundPast(
            FieldCase item,
            Optional<Recipe> recipe,
            ObservedWeather past,
            List<CycleInput.SoilWord> words) {
        this.item = item;
        this.past = past;
        this.events = Stream.concat(
                        item.status().stages().stream().flatMap(done -> worked(done, recipe)),
                        words.stream()
                                .filter(w -> !w.at().isBefore(past.air().start()))
                                .map(w -> new GroundEvent.Seen(inside(w.at()), w.word())))
                .sorted(Comparator.comparing(GroundEvent::at))
                .toList();
    }

    private Stream<GroundEvent> worked(StageRecord done, Optional<Recipe> recipe) {
        Optional<Operation> operation = recipe.flatMap(r -> r.stages().stream()
                .filter(s -> s.name().equals(done.stage()))
                .map(Stage::operation)
                .filter(GroundEvent.Worked::touchesTheTop)
                .findFirst());
        return operation
                .flatMap(o -> done.finishedAt()
                        .map(at -> (GroundEvent) new GroundEvent.Worked(inside(at), o)))
                .stream();
    }

    /** The full hour of an instant, kept within the past. */
    private Instant inside(Instant at) {
        Instant full = at.truncatedTo(ChronoUnit.HOURS);
        if (full.isBefore(past.air().start())) {
            return past.air().start();
        }
        return full.isAfter(past.air().end()) ? past.air().end() : full;
    }

    /** True where no machine has turned the top over in this round of the recipe. */
    boolean untilled() {
        SurfaceCondition surface = UNTILLED;
        for (GroundEvent event : events) {
            surface = event.after(surface);
        }
        return surface.equals(UNTILLED);
    }

    /** The soil as it will lie once it is ready for seed. */
    FieldSoil soilAtSeeding(boolean firmed) {
        return soil(firmed ? SurfaceCondition.FIRMED : SurfaceCondition.TILLED);
    }

    /** The state at the end of the past. */
    SoilState stateNow() {
        SurfaceCondition surface = UNTILLED;
        double meanTempC = Arrays.stream(past.air().airTempC()).average().orElse(10);
        SoilState state = new SoilColumn(soil(surface)).unknown(past.air().start(), meanTempC);
        for (GroundEvent event : events) {
            state = event.after(moved(state, surface, event.at()), soil(surface));
            surface = event.after(surface);
        }
        return moved(state, surface, past.air().end());
    }

    private SoilState moved(SoilState state, SurfaceCondition surface, Instant to) {
        return state.at().equals(to)
                ? state
                : new SoilColumn(soil(surface)).advance(state, Stretch.of(past, state.at(), to));
    }

    private FieldSoil soil(SurfaceCondition surface) {
        return FieldSoil.of(item.field().ground(), surface);
    }
}
