package rainward.queue.problem;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import rainward.farm.Crew;
import rainward.farm.FieldCase;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.Roster;
import rainward.farm.StageRecord;

/** Where machines and people are at the moment of planning. */
public final class Standing {

    /** What has not worked for so long is back in the yard; chosen by us, no source. */
    private static final Duration AWAY_AT_MOST = Duration.ofDays(14);

    private final Crew crew;
    private final Optional<Plan> lastOrder;
    private final Instant asOf;
    private final LastSeen<GeoPoint> seen;

    private Standing(Crew crew, Optional<Plan> lastOrder, Instant asOf) {
        this.crew = crew;
        this.lastOrder = lastOrder;
        this.asOf = asOf;
        this.seen = new LastSeen<>(lastOrder, asOf, AWAY_AT_MOST);
    }

    /**
     * A field with what was done on it.
     *
     * @param item the field; also one whose seed is in
     * @param arrival where machines arrive
     */
    public record Worked(FieldCase item, GeoPoint arrival) {}

    /** Where a machine sets out from: where its work goes on, else where it was, else the yard. */
    public static Function<Machine, GeoPoint> ofMachines(PlanProblem problem) {
        Map<String, GeoPoint> places = new HashMap<>();
        for (Job job : problem.jobs()) {
            UnderWay.on(job, problem)
                    .ifPresent(machine -> places.putIfAbsent(machine.name(), job.arrival()));
        }
        problem.standing().forEach(places::putIfAbsent);
        return machine -> places.getOrDefault(machine.name(), machine.travel().start());
    }

    /**
     * Reads off the records where everybody was last. A machine stays where its last work was; a
     * person does until the end of the day. A record tells the machine, or else the last order
     * does; the person stands in the last order only. Who should have left since is on the road.
     *
     * @param worked every field
     * @param lastOrder given out
     * @param asOf the moment of planning
     * @return places by name of machine or person; no entry where nothing is on record
     */
    public static Map<String, GeoPoint> recorded(
            List<Worked> worked, Crew crew, Optional<Plan> lastOrder, Instant asOf) {
        Standing standing = new Standing(crew, lastOrder, asOf);
        for (Worked one : worked) {
            one.item().status().stages().forEach(record -> standing.read(one, record));
        }
        Map<String, GeoPoint> arrivals = new HashMap<>();
        worked.forEach(w -> arrivals.put(w.item().field().name(), w.arrival()));
        return standing.withThoseOnTheRoad(arrivals);
    }

    /**
     * Who was to set out by now, and has been seen nowhere since, is on the way: nobody says so,
     * and were they taken to be still where they were, each new order would put off their arrival.
     */
    private Map<String, GeoPoint> withThoseOnTheRoad(Map<String, GeoPoint> arrivals) {
        Map<String, GeoPoint> was = seen.newest();
        Map<String, GeoPoint> places = new HashMap<>(was);
        for (Machine machine : crew.machines()) {
            next(machine).ifPresent(item -> {
                GeoPoint from =
                        was.getOrDefault(machine.name(), machine.travel().start());
                GeoPoint to = arrivals.getOrDefault(item.place().field(), from);
                double share = shareDriven(machine, item, from.distanceKm(to));
                if (share > 0 && !from.equals(to)) {
                    places.put(machine.name(), between(from, to, share));
                    places.put(item.hands().person(), between(from, to, share));
                }
            });
        }
        return Map.copyOf(places);
    }

    private Optional<PlanItem> next(Machine machine) {
        return lastOrder.stream()
                .flatMap(order -> order.items().stream())
                .filter(item -> item.hands().machine().equals(machine.name()))
                .filter(item -> item.work().to().isAfter(asOf))
                .min(Comparator.comparing(item -> item.work().from()));
    }

    /**
     * Share of the way that lies behind a machine now, such that what is left of it, with the
     * hitch, takes until the work begins; at most what can be driven since it was seen last.
     */
    private double shareDriven(Machine machine, PlanItem item, double straightKm) {
        double hitchH = machine.travel().hitch().toSeconds() / 3600.0;
        double wholeH = straightKm * crew.roadFactor() / machine.travel().speedKmh();
        double leftH = Math.max(0, hours(asOf, item.work().from()) - hitchH);
        double sinceH = seen.since(machine.name())
                .map(at -> Math.max(0, hours(at, asOf) - hitchH))
                .orElse(Double.MAX_VALUE);
        return wholeH <= 0 ? 0 : Math.min(1 - Math.min(1, leftH / wholeH), sinceH / wholeH);
    }

    private static double hours(Instant from, Instant to) {
        return Duration.between(from, to).toSeconds() / 3600.0;
    }

    private static GeoPoint between(GeoPoint from, GeoPoint to, double share) {
        return share >= 1
                ? to
                : new GeoPoint(
                        from.latitudeDeg() + share * (to.latitudeDeg() - from.latitudeDeg()),
                        from.longitudeDeg() + share * (to.longitudeDeg() - from.longitudeDeg()));
    }

    /** The same for fields of a roster. */
    public static Map<String, GeoPoint> recorded(
            List<FieldCase> fields, Roster roster, Optional<Plan> lastOrder, Instant asOf) {
        List<Worked> worked = fields.stream()
                .map(item -> new Worked(item, roster.arrivalAt(item.field())))
                .toList();
        return recorded(worked, roster.crew(), lastOrder, asOf);
    }

    private void read(Worked worked, StageRecord record) {
        Optional<Instant> when = seen.when(record);
        if (when.isEmpty()) {
            return;
        }
        Optional<PlanItem.Hands> told = told(worked.item().field().name(), record);
        record.machine()
                .or(() -> told.map(PlanItem.Hands::machine))
                .ifPresent(machine -> seen.note(machine, worked.arrival(), when.get()));
        told.filter(hands -> day(when.get()).equals(day(asOf)))
                .ifPresent(hands -> seen.note(hands.person(), worked.arrival(), when.get()));
    }

    /** Who was to do it, unless another machine came. */
    private Optional<PlanItem.Hands> told(String field, StageRecord record) {
        return seen.told(field, record.stage())
                .map(PlanItem::hands)
                .filter(h -> record.machine().map(h.machine()::equals).orElse(true))
                .findFirst();
    }

    private LocalDate day(Instant instant) {
        return LocalDate.ofInstant(instant, crew.zone());
    }
}
