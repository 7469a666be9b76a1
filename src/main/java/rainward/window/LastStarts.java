package rainward.window;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.farm.Crew;
import rainward.farm.Operation;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;

/** The last moments at which seeding may start so that all that fits is still done in time. */
final class LastStarts {

    private final Crew crew;
    private final Plan plan;

    LastStarts(Crew crew, Plan plan) {
        this.crew = crew;
        this.plan = plan;
    }

    /**
     * Goes back from the rain: each seeder's last field must be done when it comes, the one before
     * it early enough to drive on. Work stays within shifts, overtime counted in.
     *
     * @param done fields that are to be seeded first, with the instant by which each must be done
     * @return last safe start by field
     */
    Map<String, Instant> before(Map<String, Instant> done) {
        Map<String, Instant> starts = new HashMap<>();
        Map<String, PlanItem> next = new HashMap<>();
        List<PlanItem> seeding = new ArrayList<>(seedingItems());
        seeding.sort(Comparator.comparing((PlanItem i) -> i.work().from()).reversed());
        for (PlanItem item : seeding) {
            String field = item.place().field();
            Instant end = Optional.ofNullable(done.get(field)).orElse(Instant.MAX);
            if (end.equals(Instant.MAX)) {
                continue;
            }
            Optional<PlanItem> after = Optional.ofNullable(next.get(item.hands().machine()));
            Instant goOn = after.flatMap(
                            n -> Optional.ofNullable(starts.get(n.place().field())))
                    .map(s -> s.minus(after.orElseThrow().driving()))
                    .map(s -> s.minus(after.orElseThrow().setting()))
                    .orElse(end);
            Instant finish = goOn.isBefore(end) ? goOn : end;
            starts.put(field, inShift(finish, item.work().length()));
            next.put(item.hands().machine(), item);
        }
        return starts;
    }

    private List<PlanItem> seedingItems() {
        return plan.items().stream()
                .filter(i -> i.place().operation() == Operation.SEED)
                .toList();
    }

    /**
     * Latest start of work that ends by {@code finish}, within one shift or from an earlier one.
     */
    private Instant inShift(Instant finish, Duration work) {
        ZoneId zone = crew.zone();
        LocalDate date = finish.atZone(zone).toLocalDate();
        Duration left = work;
        for (int back = 0; back < 14; back++) {
            LocalDate day = date.minusDays(back);
            if (!crew.hours().days().contains(day.getDayOfWeek())) {
                continue;
            }
            Instant start = day.atTime(crew.hours().start()).atZone(zone).toInstant();
            Instant end = day.atTime(crew.hours().end()).atZone(zone).toInstant();
            Instant late = end.plus(crew.hours().overtime());
            Instant last = finish.isBefore(late) ? finish : late;
            Duration room = Duration.between(start, last);
            if (room.compareTo(left) >= 0) {
                return last.minus(left);
            }
            left = room.isNegative() ? left : left.minus(room);
        }
        return finish.minus(work);
    }
}
