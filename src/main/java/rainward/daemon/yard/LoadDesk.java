package rainward.daemon.yard;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import rainward.daemon.office.Office;
import rainward.daemon.office.PlanningDesk;
import rainward.farm.Operation;
import rainward.input.load.LoadSheet;
import rainward.queue.problem.Plan;
import rainward.store.round.PlanLog;

/** Where the day's order becomes what goes on the trucks. */
public final class LoadDesk {

    /** An order of the morning before still tells of the next day. */
    private static final Duration OLD_ORDER = Duration.ofHours(36);

    private final Office office;
    private final SupplyDesk supplies;

    public LoadDesk(Office office) {
        this.office = office;
        this.supplies = new SupplyDesk(office);
    }

    /**
     * The order in force on a day: the last one given out by its end, where that is of the day or
     * the one before; else one that is reckoned now.
     */
    public Plan plan(LocalDate day) {
        Instant start = day.atStartOfDay(office.zone()).toInstant();
        Instant end = day.plusDays(1).atStartOfDay(office.zone()).toInstant();
        return office.store()
                .read(books -> books.plans().lastAt(end))
                .map(PlanLog.GivenPlan::plan)
                .filter(plan -> plan.asOf().isAfter(start.minus(OLD_ORDER)))
                .orElseGet(() -> new PlanningDesk(office).plan());
    }

    /** Fields that are to be spread from a day on, the first one first. */
    public List<String> spreadOrder(LocalDate day) {
        return plan(day).items().stream()
                .filter(item -> item.place().operation() == Operation.SPREAD)
                .sorted(Comparator.comparing(item -> item.work().from()))
                .map(item -> item.place().field())
                .distinct()
                .toList();
    }

    /** What goes on the trucks on a day. */
    public LoadSheet sheet(LocalDate day) {
        Plan plan = plan(day);
        return office.store().read(books -> supplies.sheet(books, plan, day));
    }

    public LocalDate today() {
        return LocalDate.ofInstant(office.now(), office.zone());
    }
}
