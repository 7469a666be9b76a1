package rainward.queue.model;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.farm.CrewHours;
import rainward.farm.GeoPoint;
import rainward.farm.Person;
import rainward.farm.Window;
import rainward.queue.problem.HorizonMinutes;
import rainward.queue.problem.Job;
import rainward.queue.problem.PlanProblem;
import rainward.queue.shop.OpenTime;
import rainward.weather.sky.SunTimes;

/** The crew's working days within the horizon, in minutes. */
public final class Shifts {

    private final HorizonMinutes minutes;
    private final int now;
    private final OpenTime crew;
    private final int days;

    private Shifts(HorizonMinutes minutes, int now, List<OpenTime.Stretch> stretches, int days) {
        this.minutes = minutes;
        this.now = now;
        this.crew = new OpenTime(stretches);
        this.days = days;
    }

    /** Shifts, cut to daylight where the crew keeps to it, seen from the middle of the fields. */
    static Shifts of(PlanProblem problem) {
        HorizonMinutes minutes = HorizonMinutes.of(problem.horizon());
        int now = minutes.notBefore(problem.asOf());
        ZoneId zone = problem.crew().zone();
        Optional<GeoPoint> middle = middle(problem.jobs());
        List<OpenTime.Stretch> stretches = new ArrayList<>();
        int day = 0;
        LocalDate last = problem.horizon().to().atZone(zone).toLocalDate();
        for (LocalDate date = problem.horizon().from().atZone(zone).toLocalDate();
                !date.isAfter(last);
                date = date.plusDays(1)) {
            Shift shift = Shift.on(date, problem.crew().hours(), zone);
            Optional<Shift> lit = problem.crew().hours().daylightOnly() && middle.isPresent()
                    ? shift.within(SunTimes.daylight(date, zone, middle.get()))
                    : Optional.of(shift);
            if (problem.crew().hours().days().contains(date.getDayOfWeek()) && lit.isPresent()) {
                lit.get().stretch(minutes, now, day).ifPresent(stretches::add);
            }
            day++;
        }
        return new Shifts(minutes, now, stretches, day);
    }

    /** Mean place of the fields; enough for the sun, which moves a minute in 20 km. */
    public static Optional<GeoPoint> middle(List<Job> jobs) {
        if (jobs.isEmpty()) {
            return Optional.empty();
        }
        List<GeoPoint> near = jobs.stream()
                .map(Job::arrival)
                .sorted(java.util.Comparator.comparingDouble(GeoPoint::longitudeDeg)
                        .thenComparingDouble(GeoPoint::latitudeDeg))
                .toList();
        return Optional.of(near.get(near.size() / 2));
    }

    /** Overtime of each day of the horizon, in order, whether it is worked or not. */
    public static List<Window> overtimes(PlanProblem problem) {
        ZoneId zone = problem.crew().zone();
        List<Window> all = new ArrayList<>();
        LocalDate last = problem.horizon().to().atZone(zone).toLocalDate();
        for (LocalDate date = problem.horizon().from().atZone(zone).toLocalDate();
                !date.isAfter(last);
                date = date.plusDays(1)) {
            Shift shift = Shift.on(date, problem.crew().hours(), zone);
            all.add(new Window(shift.end(), shift.late()));
        }
        return all;
    }

    int days() {
        return days;
    }

    /** When a person works: the crew's shifts less their absences. */
    OpenTime of(Person person) {
        List<int[]> there = new ArrayList<>();
        int from = now;
        List<Window> away = person.absences().stream()
                .sorted(java.util.Comparator.comparing(Window::from))
                .toList();
        for (Window absence : away) {
            there.add(new int[] {from, Math.max(from, minutes.notAfter(absence.from()))});
            from = Math.max(from, minutes.notBefore(absence.to()));
        }
        there.add(new int[] {from, Math.max(from, minutes.end())});
        return crew.within(there.toArray(int[][]::new));
    }

    /** One day's work: start, end, end with overtime. */
    private record Shift(Instant start, Instant end, Instant late) {

        static Shift on(LocalDate date, CrewHours hours, ZoneId zone) {
            Instant end = date.atTime(hours.end()).atZone(zone).toInstant();
            Instant start = date.atTime(hours.start()).atZone(zone).toInstant();
            return new Shift(start, end, end.plus(hours.overtime()));
        }

        Optional<Shift> within(Optional<Window> light) {
            return light.map(l -> new Shift(
                            later(start, l.from()), earlier(end, l.to()), earlier(late, l.to())))
                    .filter(s -> s.late.isAfter(s.start));
        }

        private static Instant later(Instant a, Instant b) {
            return a.isAfter(b) ? a : b;
        }

        private static Instant earlier(Instant a, Instant b) {
            return a.isBefore(b) ? a : b;
        }

        Optional<OpenTime.Stretch> stretch(HorizonMinutes minutes, int now, int day) {
            int from = Math.max(now, minutes.notBefore(start));
            int last = Math.min(minutes.end(), minutes.notAfter(late));
            int to = Math.max(from, Math.min(last, minutes.notAfter(end)));
            return last > from
                    ? Optional.of(new OpenTime.Stretch(from, to, last, day))
                    : Optional.empty();
        }
    }
}
