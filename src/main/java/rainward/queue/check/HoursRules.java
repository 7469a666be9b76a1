package rainward.queue.check;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import rainward.farm.CrewHours;
import rainward.farm.GeoPoint;
import rainward.farm.Person;
import rainward.farm.Window;
import rainward.queue.problem.Job;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;
import rainward.weather.sky.SunTimes;

/** Nobody works outside the shift, in the dark, while away or on ground that is stopped. */
final class HoursRules {

    /** The planner takes the sun of the middle of the farm. */
    private static final Duration DUSK = Duration.ofMinutes(10);

    private final PlanProblem problem;
    private final ZoneId zone;
    private final NamedJobs jobs;

    HoursRules(PlanProblem problem) {
        this.problem = problem;
        zone = problem.crew().zone();
        jobs = new NamedJobs(problem.jobs());
    }

    List<String> faults(PlanItem item) {
        List<String> faults = new ArrayList<>();
        Job job = jobs.of(item.place().field());
        String who = item.place().field() + " " + item.place().stage();
        if (item.work().from().isBefore(problem.asOf())
                || item.work().to().isAfter(problem.horizon().to())) {
            faults.add(who + " lies outside the time that is planned: " + item.work());
        }
        LocalDate date = item.work().from().atZone(zone).toLocalDate();
        if (!inside(item.work(), shift(date))) {
            faults.add(who + " is worked outside the shift: " + item.work());
        }
        if (problem.crew().hours().daylightOnly() && dark(item.work(), date, job.arrival())) {
            faults.add(who + " is worked in the dark: " + item.work());
        }
        if (person(item).absences().stream().anyMatch(a -> a.overlaps(item.work()))) {
            faults.add(item.hands().person() + " is away: " + item.work());
        }
        if (stopped(job, item)) {
            faults.add(who + " is worked while the ground or the wind stops it: " + item.work());
        }
        return faults;
    }

    private Person person(PlanItem item) {
        return problem.crew().people().stream()
                .filter(p -> p.name().equals(item.hands().person()))
                .findFirst()
                .orElseThrow();
    }

    private static boolean inside(Window work, Optional<Window> outer) {
        return outer.isPresent()
                && !work.from().isBefore(outer.get().from())
                && !work.to().isAfter(outer.get().to());
    }

    /** The shift of a day with its overtime; empty on a day off. */
    Optional<Window> shift(LocalDate date) {
        CrewHours hours = problem.crew().hours();
        if (!hours.days().contains(date.getDayOfWeek())) {
            return Optional.empty();
        }
        Instant start = date.atTime(hours.start()).atZone(zone).toInstant();
        Instant end = date.atTime(hours.end()).atZone(zone).toInstant();
        return Optional.of(new Window(start, end.plus(hours.overtime())));
    }

    private boolean dark(Window work, LocalDate date, GeoPoint place) {
        return SunTimes.daylight(date, zone, place)
                .map(l -> new Window(l.from().minus(DUSK), l.to().plus(DUSK)))
                .filter(l -> inside(work, Optional.of(l)))
                .isEmpty();
    }

    private boolean stopped(Job job, PlanItem item) {
        BitSet hours = job.stopped().getOrDefault(item.place().operation(), new BitSet());
        return hours.stream()
                .mapToObj(h -> problem.horizon().from().plus(Duration.ofHours(h)))
                .anyMatch(h -> item.work().overlaps(new Window(h, h.plus(Duration.ofHours(1)))));
    }

    /** True where time off work holds two things, one after the other, each in one shift. */
    boolean hold(Window free, Duration first, Duration second) {
        return earliestEnd(free.from(), free.to(), first)
                .flatMap(end -> earliestEnd(end, free.to(), second))
                .isPresent();
    }

    private Optional<Instant> earliestEnd(Instant from, Instant to, Duration length) {
        if (length.isZero()) {
            return Optional.of(from);
        }
        LocalDate date = from.atZone(zone).toLocalDate().minusDays(1);
        for (; !date.isAfter(to.atZone(zone).toLocalDate()); date = date.plusDays(1)) {
            Optional<Window> shift = shift(date);
            if (shift.isPresent() && shift.get().to().isAfter(from)) {
                Instant begin = shift.get().from().isAfter(from) ? shift.get().from() : from;
                Instant end = begin.plus(length);
                if (!end.isAfter(shift.get().to()) && !end.isAfter(to)) {
                    return Optional.of(end);
                }
            }
        }
        return Optional.empty();
    }
}
