package rainward.queue.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rainward.farm.Stage;
import rainward.farm.Window;
import rainward.queue.model.Shifts;
import rainward.queue.problem.HorizonMinutes;
import rainward.queue.problem.Job;
import rainward.queue.problem.OpenStages;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;
import rainward.queue.search.Genome;
import rainward.queue.shop.Decoder;

/**
 * The row of fields that leads to the order given out before. Every machine does its work in the
 * order of the row; so the row is any that agrees with the work of each machine in turn. A field
 * with a long wait between its stages stands in the row once for each part.
 */
final class LastOrder {

    /** Starting from the last order takes this many tries: with and without its overtime. */
    static final int STARTS = 2;

    private final PlanProblem problem;
    private final Plan order;
    private final Decoder decoder;
    private final Map<String, Integer> index = new HashMap<>();

    /** Parts that stand before a part, on its machine or of its field. */
    private final Map<Part, Set<Part>> before = new LinkedHashMap<>();

    private LastOrder(PlanProblem problem, Plan order, Decoder decoder) {
        this.problem = problem;
        this.order = order;
        this.decoder = decoder;
        for (int i = 0; i < problem.jobs().size(); i++) {
            index.putIfAbsent(problem.jobs().get(i).name(), i);
        }
        readMachines();
    }

    /** A field, or the part of it between two long waits. */
    private record Part(int item, int part) {}

    /** Genomes that lead back to the order, as nearly as time and forecast still allow. */
    static List<Genome> of(PlanProblem problem, Plan order, Decoder decoder) {
        LastOrder last = new LastOrder(problem, order, decoder);
        int[] row = last.row();
        int[] choices = last.waits(decoder.genes());
        int[] shiftsOnly = choices.clone();
        last.dropUnusedOvertime(shiftsOnly);
        return List.of(new Genome(row, choices), new Genome(row.clone(), shiftsOnly));
    }

    private void readMachines() {
        Map<String, Part> last = new HashMap<>();
        for (PlanItem item : inTime()) {
            Optional<Part> part = partOf(item);
            part.ifPresent(p -> {
                Set<Part> earlier = before.computeIfAbsent(p, k -> new HashSet<>());
                Stream.of("m" + item.hands().machine(), "p" + item.hands().person())
                        .map(hand -> last.put(hand, p))
                        .filter(previous -> previous != null && !previous.equals(p))
                        .forEach(earlier::add);
            });
        }
        for (int i = 0; i < problem.jobs().size(); i++) {
            for (int part = 0; part < decoder.parts().of(i); part++) {
                Set<Part> earlier = before.computeIfAbsent(new Part(i, part), k -> new HashSet<>());
                if (part > 0) {
                    earlier.add(new Part(i, part - 1));
                }
            }
        }
    }

    /** Work that goes on or is done stands before all others, whatever the row. */
    private Optional<Part> partOf(PlanItem item) {
        return Optional.ofNullable(index.get(item.place().field())).flatMap(i -> {
            List<Stage> stages = problem.jobs().get(i).recipe().stages();
            OpenStages open = OpenStages.of(problem.jobs().get(i));
            return IntStream.range(0, stages.size())
                    .filter(s -> open.stillToDo(s, order.asOf()))
                    .filter(s -> stages.get(s).name().equals(item.place().stage()))
                    .mapToObj(s -> new Part(i, decoder.parts().part(i, s)))
                    .findFirst();
        });
    }

    private List<PlanItem> inTime() {
        return order.items().stream()
                .sorted(Comparator.comparing(i -> i.work().from()))
                .toList();
    }

    /** Fields in an order that agrees with all machines; those that were left out come last. */
    private int[] row() {
        List<Part> rest = new ArrayList<>(before.keySet());
        Set<Part> placed = new LinkedHashSet<>();
        while (!rest.isEmpty()) {
            Part next = rest.stream()
                    .filter(p -> placed.containsAll(before.getOrDefault(p, Set.of())))
                    .findFirst()
                    .orElse(rest.get(0));
            placed.add(next);
            rest.remove(next);
        }
        return placed.stream()
                .sorted(Comparator.comparing(
                        p -> !problem.jobs().get(p.item()).field().status().pinnedFirst()))
                .mapToInt(Part::item)
                .toArray();
    }

    /** The latest wait that does not delay seeding beyond where it was. */
    private int[] waits(int genes) {
        int[] choices = new int[genes];
        HorizonMinutes minutes = HorizonMinutes.of(problem.horizon());
        for (int i = 0; i < problem.jobs().size(); i++) {
            Job job = problem.jobs().get(i);
            int[] starts = decoder.waits(i);
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
