package rainward.queue.model;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rainward.queue.problem.Job;
import rainward.queue.problem.OpenStages;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;
import rainward.queue.shop.Task;

/**
 * What the last order told the crew to do, and what it costs to tell them otherwise.
 *
 * <p>Moving one item costs a share of the value of the last order; moving the next item of a
 * machine, for which the crew may be loading already, costs {@link #NEXT_ITEM_FACTOR} times that.
 */
public final class Habits {

    /** Price of moving a machine's next item against any other; chosen by us, no source. */
    static final double NEXT_ITEM_FACTOR = 4;

    private final Map<Key, Known> known = new HashMap<>();
    private final Set<Key> toDo = new HashSet<>();
    private final Set<Key> going = new HashSet<>();
    private final double priceHa;
    private final ZoneId zone;

    private Habits(double priceHa, ZoneId zone) {
        this.priceHa = priceHa;
        this.zone = zone;
    }

    /** A stage of a field. */
    public record Key(String field, String stage) {}

    /**
     * Where it was.
     *
     * @param machine that was to do it
     * @param before what the machine was to do before it; empty fields: nothing that is still open
     * @param start when
     * @param priceHa of moving it
     */
    public record Known(String machine, Key before, Instant start, double priceHa) {}

    static final Key NOTHING = new Key("", "");

    /** Reads the last order; what is done or under way by now is left out of it. */
    public static Habits of(PlanProblem problem) {
        double value = problem.lastOrder().map(o -> o.value().earnedHa()).orElse(0.0);
        Habits habits = new Habits(
                problem.prices().changeFraction() * value, problem.crew().zone());
        problem.lastOrder().ifPresent(order -> {
            problem.jobs().forEach(job -> habits.readStages(job, order.asOf()));
            habits.read(order);
        });
        return habits;
    }

    private void readStages(Job job, Instant orderedAt) {
        OpenStages stages = OpenStages.of(job);
        stages.underWay().ifPresent(r -> going.add(new Key(job.name(), r.stage())));
        for (int i = 0; i < stages.count(); i++) {
            if (stages.stillToDo(i, orderedAt)) {
                toDo.add(new Key(job.name(), stages.stage(i).name()));
            }
        }
    }

    private void read(Plan order) {
        Map<String, Key> last = new HashMap<>();
        List<PlanItem> items = new ArrayList<>(order.items());
        items.sort(Comparator.comparing(i -> i.work().from()));
        for (PlanItem item : items) {
            Key key = new Key(item.place().field(), item.place().stage());
            String machine = item.hands().machine();
            if (toDo.contains(key) && !known.containsKey(key)) {
                Key before = last.getOrDefault(machine, NOTHING);
                double price = priceHa * (before.equals(NOTHING) ? NEXT_ITEM_FACTOR : 1);
                known.put(key, new Known(machine, before, item.work().from(), price));
                last.put(machine, key);
            }
        }
    }

    /** Price of moving everything: what is not kept is paid. */
    public double allHa() {
        return known.values().stream().mapToDouble(Known::priceHa).sum();
    }

    /** What the crew was told about a stage, if anything. */
    Optional<Known> of(String field, String stage) {
        return Optional.ofNullable(known.get(new Key(field, stage)));
    }

    /** Told of each stage that was in the last order, whether its place is kept. */
    public interface Judged {
        void judge(Key key, Known was, boolean kept);
    }

    /** Goes through the items of a new plan, which are in order of start. */
    public void walk(List<PlanItem> items, Judged judged) {
        Map<String, Key> last = new HashMap<>();
        Set<Key> seen = new HashSet<>();
        for (PlanItem item : items) {
            Key key = new Key(item.place().field(), item.place().stage());
            String machine = item.hands().machine();
            if (going.contains(key) || !seen.add(key)) {
                continue;
            }
            Key before = last.getOrDefault(machine, NOTHING);
            of(key.field(), key.stage())
                    .ifPresent(was -> judged.judge(
                            key, was, kept(was, machine, before, item.work().from())));
            last.put(machine, key);
        }
    }

    /** True where the crew would say that an item has not moved: not its day, nor its turn. */
    private boolean kept(Known was, String machine, Key before, Instant start) {
        long apart = Math.abs(Duration.between(was.start, start).toMinutes());
        return was.machine.equals(machine)
                && LocalDate.ofInstant(start, zone).equals(LocalDate.ofInstant(was.start, zone))
                && (was.before.equals(before) || apart <= Task.Habit.SAME_START_MINUTES);
    }
}
