package rainward.daemon.board;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rainward.farm.DayClock;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;

/** Says where a field stands in an order, so that whoever spoke of it sees what became of it. */
final class FieldPlace {

    private final DayClock clock;

    FieldPlace(DayClock clock) {
        this.clock = clock;
    }

    /** First and last work on a field, or that it is not in the order, and why. */
    String in(Plan plan, String field) {
        List<PlanItem> work = plan.items().stream()
                .filter(item -> item.place().field().equals(field))
                .sorted(Comparator.comparing(item -> item.work().from()))
                .toList();
        return work.isEmpty()
                ? "not in the order"
                        + plan.whyLeftOut(field).map(why -> " (" + why + ")").orElse("")
                : Stream.of(work.get(0), work.get(work.size() - 1))
                        .distinct()
                        .map(this::words)
                        .collect(Collectors.joining(", "));
    }

    private String words(PlanItem item) {
        return item.place().stage() + " " + clock.dayTime(item.work().from());
    }

    /** Both places, or that nothing moved. */
    static String change(String was, String now) {
        return was.equals(now) ? "as before, " + now : "was " + was + "; now " + now;
    }
}
