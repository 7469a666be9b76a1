package rainward.cycle.ground;

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
public final class GroundPast {

    /**
     * Weeds and what the failed crop left stand on a field that waits: a third of the ground, roots
     * to a foot. Common practice, no source.
     */
    private static final SurfaceCondition UNTILLED =
            new SurfaceCondition(Tilth.SETTLED, 0.1, new Vegetation(0.3, 30));

    private final FieldCase item;
    private final ObservedWeather past;
    private final List<GroundEvent> events;

    /**
     * The past of a field.
     *
     * @param item with what was done on it
     * @param recipe its chain of stages, if it is known
     * @param past weather at the field, up to now
     * @param words of people who dug there
     */
    public GroundPast(
            FieldCase item, Optional<Recipe> recipe, ObservedWeather past, List<SoilWord> words) {
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
    public boolean untilled() {
        return surface(events.size()).equals(UNTILLED);
    }

    /** The soil as it will lie once it is ready for seed. */
    public FieldSoil soilAtSeeding(boolean firmed) {
        return soil(firmed ? SurfaceCondition.FIRMED : SurfaceCondition.TILLED);
    }

    /** The state at the end of the past. */
    public SoilState stateNow() {
        return stateNow(GroundMemory.none());
    }

    /** The same, from whatever part of the way somebody remembers. */
    public SoilState stateNow(GroundMemory memory) {
        return reached(events.size(), past.air().end(), memory);
    }

    /** The state at an hour after so many events and before the next. */
    private SoilState reached(int happened, Instant at, GroundMemory memory) {
        GroundMemory.Key key = new GroundMemory.Key(
                item.field().property(), item.field().ground(), events.subList(0, happened));
        Optional<SoilState> known = memory.before(key, at);
        SurfaceCondition surface = surface(happened);
        SoilState state = known.isPresent() ? known.get() : begun(happened, memory);
        while (state.at().isBefore(at)) {
            state = new SoilColumn(soil(surface))
                    .advance(state, Stretch.of(past, state.at(), memory.step(state.at(), at)));
            memory.keep(key, state);
        }
        return state;
    }

    /** The state right after the last of so many events. */
    private SoilState begun(int happened, GroundMemory memory) {
        if (happened == 0) {
            double meanTempC = Arrays.stream(past.air().airTempC()).average().orElse(10);
            return new SoilColumn(soil(UNTILLED)).unknown(past.air().start(), meanTempC);
        }
        GroundEvent last = events.get(happened - 1);
        SoilState before = reached(happened - 1, last.at(), memory);
        return last.after(before, soil(surface(happened - 1)));
    }

    private SurfaceCondition surface(int happened) {
        SurfaceCondition surface = UNTILLED;
        for (GroundEvent event : events.subList(0, happened)) {
            surface = event.after(surface);
        }
        return surface;
    }

    private FieldSoil soil(SurfaceCondition surface) {
        return FieldSoil.of(item.field().ground(), surface);
    }
}
