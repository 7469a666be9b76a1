package rainward.queue.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import rainward.farm.Window;
import rainward.queue.model.Shifts;
import rainward.queue.model.Yields;
import rainward.queue.problem.HorizonMinutes;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;
import rainward.queue.search.Genome;

/**
 * The row of fields that leads to the order given out before. Every machine does its fields in the
 * order of the row; so the row is any that agrees with the fields of each machine in turn.
 */
final class LastOrder {

    /** Starting from the last order takes this many tries: with and without its overtime. */
    static final int STARTS = 2;

    private final PlanProblem problem;
    private final Plan order;
    private final Map<String, Integer> index = new HashMap<>();
    private final Map<Integer, Set<Integer>> before = new HashMap<>();

    private LastOrder(PlanProblem problem, Plan order) {
        this.problem = problem;
        this.order = order;
        for (int i = 0; i < problem.jobs().size(); i++) {
            index.put(problem.jobs().get(i).name(), i);
            before.put(i, new HashSet<>());
        }
        readMachines();
    }

    /** Genomes that lead back to the order, as nearly as time and forecast still allow. */
    static List<Genome> of(PlanProblem problem, Plan order, int genes) {
        LastOrder last = new LastOrder(problem, order);
        int[] row = last.row();
        int[] choices = last.waits(genes);
        int[] shiftsOnly = choices.clone();
        last.dropUnusedOvertime(shiftsOnly);
        return List.of(new Genome(row, choices), new Genome(row.clone(), shiftsOnly));
    }

    private void readMachines() {
        Map<String, Integer> last = new HashMap<>();
        for (PlanItem item : inTime()) {
            int field = index.getOrDefault(item.place().field(), -1);
            int previous = last.getOrDefault(item.hands().machine(), field);
            if (field >= 0 && previous != field) {
                earlier(field).add(previous);
            }
            if (field >= 0) {
                last.put(item.hands().machine(), field);
            }
        }
    }

    private Set<Integer> earlier(int field) {
        return before.getOrDefault(field, new HashSet<>());
    }

    private List<PlanItem> inTime() {
        return order.items().stream()
                .sorted(Comparator.comparing(i -> i.work().from()))
                .toList();
    }

    /** Fields in an order that agrees with all machines; those that were left out come last. */
    private int[] row() {
        List<Integer> rest = new ArrayList<>();
        for (PlanItem item : inTime()) {
            int field = index.getOrDefault(item.place().field(), -1);
            if (field >= 0 && !rest.contains(field)) {
                rest.add(field);
            }
        }
        for (int i = 0; i < problem.jobs().size(); i++) {
            if (!rest.contains(i)) {
                rest.add(i);
            }
        }
        List<Integer> row = new ArrayList<>();
        while (!rest.isEmpty()) {
            Integer next = rest.stream()
                    .filter(f -> row.containsAll(earlier(f)))
                    .findFirst()
                    .orElse(rest.get(0));
            row.add(next);
            rest.remove(next);
        }
        row.sort(Comparator.comparing(
                f -> !problem.jobs().get(f).field().status().pinnedFirst()));
        return row.stream().mapToInt(f -> f).toArray();
    }

    /** The latest wait that does not delay seeding beyond where it was. */
    private int[] waits(int genes) {
        int[] choices = new int[genes];
        Yields yields = new Yields(problem);
        HorizonMinutes minutes = HorizonMinutes.of(problem.horizon());
        for (int i = 0; i < problem.jobs().size(); i++) {
            Job job = problem.jobs().get(i);
            int[] starts = yields.starts(job);
            int was = order.seedingOf(job.name())
                    .map(s -> minutes.notAfter(s.work().from()))
                    .orElse(0);
            for (int c = 0; c < starts.length; c++) {
                choices[i] = starts[c] <= was ? c : choices[i];
            }
        }
        return choices;
    }

    private void dropUnusedOvertime(int[] choices) {
        int items = problem.jobs().size();
        List<Window> used = order.items().stream().map(PlanItem::work).toList();
        List<Window> overtimes = Shifts.overtimes(problem);
        for (int day = 0; day < overtimes.size(); day++) {
            Window overtime = overtimes.get(day);
            boolean none = used.stream().noneMatch(overtime::overlaps);
            choices[items + day] = none ? 1 : 0;
        }
    }
}
