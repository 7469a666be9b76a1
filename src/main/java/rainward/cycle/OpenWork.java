package rainward.cycle;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.List;
import rainward.farm.Crew;
import rainward.farm.CrewHours;
import rainward.farm.FieldCase;
import rainward.farm.Machine;
import rainward.farm.Recipe;
import rainward.farm.Stage;
import rainward.farm.StageRecord;
import rainward.readiness.ReadinessCase;

/**
 * When a field could be ready for seed if the whole crew went there first: the stages still open,
 * one after the other, each with the fastest machine, within shifts. What other fields want of the
 * crew is the planner's business.
 */
final class OpenWork {

    private final Crew crew;

    OpenWork(Crew crew) {
        this.crew = crew;
    }

    /** Stages before seeding that are not done, and when they could be. */
    ReadinessCase.Work of(FieldCase item, Recipe recipe, Instant asOf) {
        List<Stage> open = recipe.stages().stream()
                .takeWhile(stage -> !stage.equals(recipe.seeding()))
                .filter(stage -> !done(item, stage))
                .toList();
        Instant at = asOf;
        for (Stage stage : open) {
            at = worked(inShift(at.plus(stage.leastWait())), hours(item, stage));
        }
        return new ReadinessCase.Work(open.stream().map(Stage::name).toList(), at, crew.hours());
    }

    private static boolean done(FieldCase item, Stage stage) {
        return item.status().of(stage.name()).map(StageRecord::done).orElse(false);
    }

    private Duration hours(FieldCase item, Stage stage) {
        double fastest = crew.machines().stream()
                .filter(m -> m.operations().contains(stage.operation()))
                .map(Machine::work)
                .mapToDouble(Machine.WorkPace::workRateHaPerH)
                .max()
                .orElse(Double.POSITIVE_INFINITY);
        return Duration.ofMinutes(Math.round(item.field().areaHa() / fastest * 60));
    }

    /** The end of work that starts in a shift and goes on in the next where it does not fit. */
    private Instant worked(Instant start, Duration work) {
        Instant at = start;
        Duration left = work;
        while (true) {
            Duration today = Duration.between(at, end(at));
            if (today.compareTo(left) >= 0) {
                return at.plus(left);
            }
            left = left.minus(today);
            at = inShift(end(at));
        }
    }

    private Instant end(Instant inShift) {
        return local(inShift).with(crew.hours().end()).toInstant();
    }

    /** The instant itself where it lies in a shift, else the start of the next one. */
    private Instant inShift(Instant at) {
        CrewHours hours = crew.hours();
        ZonedDateTime local = local(at);
        LocalDate day = local.toLocalDate();
        boolean late = !local.toLocalTime().isBefore(hours.end());
        if (late || !hours.days().contains(day.getDayOfWeek())) {
            do {
                day = day.plusDays(1);
            } while (!hours.days().contains(day.getDayOfWeek()));
            return day.atTime(hours.start()).atZone(crew.zone()).toInstant();
        }
        return local.toLocalTime().isBefore(hours.start())
                ? day.atTime(hours.start()).atZone(crew.zone()).toInstant()
                : at;
    }

    private ZonedDateTime local(Instant at) {
        return at.atZone(crew.zone());
    }
}
