package rainward.replay.crew;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.Recipe;
import rainward.farm.Stage;
import rainward.farm.StageRecord;

/** What has been done on one field so far. */
final class FieldWork {

    private final Field field;
    private final Recipe recipe;
    private final List<StageRecord> done = new ArrayList<>();
    private Optional<StageRecord> goingOn = Optional.empty();
    private Optional<StageRecord> broken = Optional.empty();
    private Optional<String> sownMix = Optional.empty();
    private double workedMinutes;

    FieldWork(Field field, Recipe recipe) {
        this.field = field;
        this.recipe = recipe;
    }

    Field field() {
        return field;
    }

    Recipe recipe() {
        return recipe;
    }

    boolean open() {
        return sownMix.isEmpty();
    }

    /** True while a machine is on it. */
    boolean taken() {
        return goingOn.isPresent();
    }

    Stage nextStage() {
        return recipe.stages().get(Math.min(done.size(), recipe.stages().size() - 1));
    }

    /**
     * True where the next stage may start by its waits. What has waited too long has to be done
     * again: the record of the stage before it is struck out.
     */
    boolean due(Instant now) {
        if (!open() || taken()) {
            return false;
        }
        if (done.isEmpty()) {
            return true;
        }
        Duration waited =
                Duration.between(done.get(done.size() - 1).finishedAt().orElseThrow(), now);
        if (nextStage()
                .greatestWait()
                .filter(most -> waited.compareTo(most) > 0)
                .isPresent()) {
            done.remove(done.size() - 1);
            workedMinutes = 0;
            return due(now);
        }
        return waited.compareTo(nextStage().leastWait()) >= 0;
    }

    void begin(Instant now, String machine) {
        goingOn = Optional.of(new StageRecord(
                nextStage().name(), Optional.of(now), Optional.empty(), Optional.of(machine)));
    }

    /** The machine leaves; what it has worked counts when one comes back. */
    void leave(Instant now) {
        broken = goingOn.map(going -> new StageRecord(
                going.stage(), going.startedAt(), Optional.of(now), going.machine()));
        goingOn = Optional.empty();
    }

    /**
     * Works on.
     *
     * @param minutes of work at the usual pace
     * @param whole minutes that the stage takes
     * @return true where the stage is done by it
     */
    boolean work(double minutes, double whole) {
        workedMinutes += minutes;
        return workedMinutes >= whole - 1e-9;
    }

    void finish(Instant now, Optional<String> mix) {
        StageRecord going = goingOn.orElseThrow();
        boolean seeding = nextStage().equals(recipe.seeding());
        done.add(new StageRecord(
                going.stage(), going.startedAt(), Optional.of(now), going.machine()));
        goingOn = Optional.empty();
        workedMinutes = 0;
        if (seeding) {
            sownMix = mix;
        }
    }

    /** As it stands, with the visit of a machine that left before it was done. */
    FieldCase visited() {
        FieldCase item = asCase();
        List<StageRecord> stages = new ArrayList<>(item.status().stages());
        broken.ifPresent(stages::add);
        return new FieldCase(
                field,
                new FieldStatus(item.status().state(), stages, sownMix, Optional.empty(), false));
    }

    FieldCase asCase() {
        List<StageRecord> stages = new ArrayList<>(done);
        goingOn.ifPresent(stages::add);
        FieldState state = !open()
                ? FieldState.SEEDED
                : stages.isEmpty() ? FieldState.PENDING : FieldState.IN_WORK;
        return new FieldCase(
                field, new FieldStatus(state, stages, sownMix, Optional.empty(), false));
    }
}
