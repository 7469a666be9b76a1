package rainward.queue.reasons;

import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.farm.Stage;
import rainward.farm.StageRecord;
import rainward.farm.Window;
import rainward.queue.model.Shifts;
import rainward.queue.pace.WorkTime;
import rainward.queue.problem.HorizonMinutes;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;
import rainward.weather.sky.SunTimes;

/** Finds out what keeps an item from starting sooner. */
final class Bindings {

    private static final Duration SLACK = Duration.ofMinutes(2);

    private final PlanProblem problem;
    private final List<PlanItem> items;

    Bindings(PlanProblem problem, Plan plan) {
        this.problem = problem;
        items = plan.items().stream()
                .sorted(Comparator.comparing((PlanItem i) -> i.work().from()))
                .toList();
    }

    ItemReason of(Job job, PlanItem item) {
        ItemReason why = why(job, item);
        return new ItemReason(
                item, why.binding(), why.words() + filling(job, item) + setting(item));
    }

    /** How the field's rates empty the machine, where that takes a part of the time. */
    private String filling(Job job, PlanItem item) {
        Operation operation = item.place().operation();
        Optional<Machine> machine = problem.crew().machines().stream()
                .filter(m -> m.name().equals(item.hands().machine()))
                .findFirst();
        if (operation != Operation.SPREAD || machine.isEmpty()) {
            return "";
        }
        return job.fillings()
                .of(machine.get(), operation)
                .map(f ->
                        "; " + Math.round(f.fillCount()) + (f.fillCount() > 1 ? " loads" : " load")
                                + " over the whole field, "
                                + WorkTime.stopping(machine.get(), f).toMinutes() + " min to fill")
                .orElse("; loads are not known, so they are taken by the ground it works");
    }

    /** A change of mix, which takes a part of the time. */
    private static String setting(PlanItem item) {
        return item.setting().isZero()
                ? ""
                : "; " + item.setting().toMinutes() + " min to empty, clean and set it for "
                        + item.sowing().orElseThrow().mix();
    }

    private ItemReason why(Job job, PlanItem item) {
        Instant start = item.work().from();
        Instant departure = item.setsOut();
        Stage stage = stage(job, item);
        Optional<Instant> stageBefore = stageBefore(job, item);
        if (near(departure, problem.asOf())) {
            return reason(item, Binding.NOW, "starts at once");
        }
        if (job.field().status().heldUntil().filter(h -> near(h, start)).isPresent()) {
            return reason(item, Binding.HELD, "is held until then");
        }
        if (stageBefore.filter(b -> near(b.plus(stage.leastWait()), start)).isPresent()) {
            return stage.leastWait().isZero()
                    ? reason(item, Binding.STAGE_BEFORE, "follows the stage before it")
                    : reason(
                            item,
                            Binding.WAIT,
                            "waits " + hours(stage.leastWait()) + " as it must");
        }
        return busy(item, departure)
                .or(() -> shut(job, item, departure))
                .orElseGet(() -> chosen(item));
    }

    private Optional<ItemReason> busy(PlanItem item, Instant departure) {
        Optional<PlanItem> onMachine =
                last(item, o -> o.hands().machine().equals(item.hands().machine()));
        Optional<PlanItem> byPerson =
                last(item, o -> o.hands().person().equals(item.hands().person()));
        if (onMachine.filter(o -> near(o.work().to(), departure)).isPresent()) {
            return Optional.of(reason(
                    item,
                    Binding.MACHINE,
                    item.hands().machine() + " comes from "
                            + onMachine.get().place().field()));
        }
        boolean fromOther = byPerson.filter(
                        o -> !o.hands().machine().equals(item.hands().machine()))
                .filter(o -> sameDay(o.work().to(), departure))
                .isPresent();
        return fromOther
                ? Optional.of(reason(
                        item,
                        Binding.PERSON,
                        item.hands().person()
                                + " comes from "
                                + byPerson.get().place().field()))
                : Optional.empty();
    }

    private Optional<ItemReason> shut(Job job, PlanItem item, Instant departure) {
        BitSet stopped = job.stopped().getOrDefault(item.place().operation(), new BitSet());
        int minute = HorizonMinutes.of(problem.horizon()).notAfter(item.work().from());
        if (minute % 60 == 0 && minute > 0 && stopped.get(minute / 60 - 1)) {
            return Optional.of(
                    reason(item, Binding.GROUND, "the ground or the wind stops it until then"));
        }
        return dayStarts(departure) || dayStarts(item.work().from())
                ? Optional.of(reason(item, Binding.DAY_START, "the day's work begins"))
                : Optional.empty();
    }

    private static ItemReason chosen(PlanItem item) {
        return item.sowing().isPresent()
                ? reason(item, Binding.BETTER_HOUR, "a later hour is better for the seed")
                : reason(item, Binding.NEXT_STAGE, "done sooner it would be stale before the next");
    }

    private boolean dayStarts(Instant instant) {
        ZonedDateTime local = instant.atZone(problem.crew().zone());
        Instant shift = local.toLocalDate()
                .atTime(problem.crew().hours().start())
                .atZone(problem.crew().zone())
                .toInstant();
        Optional<Instant> sunrise = Shifts.middle(problem.jobs())
                .flatMap(p ->
                        SunTimes.daylight(local.toLocalDate(), problem.crew().zone(), p))
                .map(Window::from);
        return near(shift, instant) || sunrise.filter(s -> near(s, instant)).isPresent();
    }

    private boolean sameDay(Instant a, Instant b) {
        return a.atZone(problem.crew().zone())
                .toLocalDate()
                .equals(b.atZone(problem.crew().zone()).toLocalDate());
    }

    /** The last item before this one that meets a condition. */
    Optional<PlanItem> last(PlanItem item, java.util.function.Predicate<PlanItem> condition) {
        return items.stream()
                .filter(o -> o.work().from().isBefore(item.work().from()))
                .filter(condition)
                .reduce((a, b) -> b);
    }

    private Optional<Instant> stageBefore(Job job, PlanItem item) {
        List<Stage> stages = job.recipe().stages();
        int index = stages.indexOf(stage(job, item));
        if (index == 0) {
            return Optional.empty();
        }
        String before = stages.get(index - 1).name();
        return last(
                        item,
                        o -> o.place().field().equals(job.name())
                                && o.place().stage().equals(before))
                .map(o -> o.work().to())
                .or(() -> job.field().status().of(before).flatMap(StageRecord::finishedAt));
    }

    private static Stage stage(Job job, PlanItem item) {
        return job.recipe().stages().stream()
                .filter(s -> s.name().equals(item.place().stage()))
                .findFirst()
                .orElseThrow();
    }

    private static boolean near(Instant a, Instant b) {
        return Duration.between(a, b).abs().compareTo(SLACK) <= 0;
    }

    private static String hours(Duration duration) {
        return duration.toHours() + " h";
    }

    private static ItemReason reason(PlanItem item, Binding binding, String words) {
        return new ItemReason(item, binding, words);
    }
}
