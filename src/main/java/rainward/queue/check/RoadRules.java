package rainward.queue.check;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.StageRecord;
import rainward.farm.Window;
import rainward.queue.pace.Roads;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;

/** Machines and people need time to get from place to place and to change mixes, in shifts. */
final class RoadRules {

    private final PlanProblem problem;
    private final HoursRules hours;
    private final NamedJobs jobs;
    private final Map<String, String> boxes = new HashMap<>();

    RoadRules(PlanProblem problem, HoursRules hours) {
        this.problem = problem;
        this.hours = hours;
        jobs = new NamedJobs(problem.jobs());
    }

    /** Where something was last, and since when it is free. */
    private record Free(GeoPoint place, Instant since) {}

    List<String> faults(Plan plan) {
        List<String> faults = new ArrayList<>();
        Map<String, Free> machines = new HashMap<>();
        Map<String, Free> people = new HashMap<>();
        problem.crew()
                .machines()
                .forEach(m -> machines.put(m.name(), new Free(stands(m), problem.asOf())));
        boxes.clear();
        boxes.putAll(problem.inBoxes());
        List<PlanItem> items = new ArrayList<>(plan.items());
        items.sort(Comparator.comparing(i -> i.work().from()));
        for (PlanItem item : items) {
            String machine = item.hands().machine();
            String person = item.hands().person();
            Free machineFree = Objects.requireNonNull(machines.get(machine), machine);
            Free personFree =
                    people.getOrDefault(person, new Free(is(person, machineFree), problem.asOf()));
            faults.addAll(faults(item, machineFree, personFree));
            Free now = new Free(place(item), item.work().to());
            machines.put(machine, now);
            people.put(person, now);
        }
        return faults;
    }

    /** Somebody of whom nothing is known comes to the machine in time. */
    private GeoPoint is(String person, Free machine) {
        return problem.standing().getOrDefault(person, machine.place());
    }

    private GeoPoint place(PlanItem item) {
        return jobs.of(item.place().field()).arrival();
    }

    /** Where work goes on there its machine is, or else where it was seen last. */
    private GeoPoint stands(Machine machine) {
        for (Job job : problem.jobs()) {
            Optional<StageRecord> going = job.field().status().stages().stream()
                    .filter(StageRecord::underWay)
                    .reduce((a, b) -> b);
            if (going.filter(r -> machine.name().equals(worker(job, r))).isPresent()) {
                return job.arrival();
            }
        }
        return problem.standing().getOrDefault(machine.name(), machine.travel().start());
    }

    /** Who works: it is on record, or was told, or the first that can has to be taken for it. */
    private String worker(Job job, StageRecord record) {
        if (record.machine().isPresent()) {
            return record.machine().get();
        }
        for (PlanItem told : problem.lastOrder().map(Plan::items).orElse(List.of())) {
            if (told.place().field().equals(job.name())
                    && told.place().stage().equals(record.stage())) {
                return told.hands().machine();
            }
        }
        return problem.crew().machines().stream()
                .filter(m -> job.recipe().stages().stream()
                        .anyMatch(s -> s.name().equals(record.stage())
                                && m.operations().contains(s.operation())))
                .map(Machine::name)
                .findFirst()
                .orElse("");
    }

    private List<String> faults(PlanItem item, Free machineFree, Free personFree) {
        List<String> faults = new ArrayList<>();
        Machine machine = problem.crew().machines().stream()
                .filter(m -> m.name().equals(item.hands().machine()))
                .findFirst()
                .orElseThrow();
        double factor = problem.crew().roadFactor();
        int drive = Roads.minutes(machine, machineFree.place(), place(item), factor);
        Duration setting = setting(item, machine);
        Instant bothFree = later(machineFree.since(), personFree.since());
        Window free = new Window(bothFree, later(bothFree, item.work().from()));
        if (item.work().from().isBefore(bothFree)
                || !hours.hold(free, Duration.ofMinutes(drive), setting)) {
            faults.add(machine.name() + " cannot be at " + item.place() + " in time");
        }
        if (Math.abs(item.drivingHours() * 60 - drive) > 1e-6) {
            faults.add(item.place() + " says " + item.drivingHours() + " h on the road");
        }
        if (!item.setting().equals(setting)) {
            faults.add(item.place() + " takes " + item.setting() + " to set, not " + setting);
        }
        double hopH = personFree.place().distanceKm(machineFree.place()) * factor / Roads.CAR_KMH;
        Duration hop = Duration.ofSeconds((long) (hopH * 3600));
        Instant atMachine = later(machineFree.since(), personFree.since().plus(hop));
        boolean overNight = !sameDay(personFree.since(), item.work().from());
        if (!overNight
                && atMachine
                        .plus(Duration.ofMinutes(drive))
                        .plus(setting)
                        .isAfter(item.work().from())) {
            faults.add(item.hands().person() + " cannot be at " + item.place() + " in time");
        }
        return faults;
    }

    private boolean sameDay(Instant a, Instant b) {
        return a.atZone(problem.crew().zone())
                .toLocalDate()
                .equals(b.atZone(problem.crew().zone()).toLocalDate());
    }

    /** A seeder that holds another mix is set anew, unless it works there already. */
    private Duration setting(PlanItem item, Machine machine) {
        if (item.sowing().isEmpty()) {
            return Duration.ZERO;
        }
        String mix = item.sowing().get().mix();
        Optional<String> held = Optional.ofNullable(boxes.put(machine.name(), mix));
        boolean going = jobs.of(item.place().field())
                .field()
                .status()
                .underWay(item.place().stage())
                .isPresent();
        return going || held.filter(other -> !other.equals(mix)).isEmpty()
                ? Duration.ZERO
                : machine.mixChange();
    }

    private static Instant later(Instant a, Instant b) {
        return a.isAfter(b) ? a : b;
    }
}
