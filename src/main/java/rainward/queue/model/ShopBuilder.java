package rainward.queue.model;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.farm.Person;
import rainward.farm.Stage;
import rainward.farm.StageRecord;
import rainward.queue.pace.WorkTime;
import rainward.queue.problem.HorizonMinutes;
import rainward.queue.problem.Job;
import rainward.queue.problem.OpenStages;
import rainward.queue.problem.PlanProblem;
import rainward.queue.problem.Standing;
import rainward.queue.problem.UnderWay;
import rainward.queue.shop.Chain;
import rainward.queue.shop.Item;
import rainward.queue.shop.OpenTime;
import rainward.queue.shop.Shop;
import rainward.queue.shop.Task;

/** Turns a planning problem into minutes and indices. */
public final class ShopBuilder {

    private static final Task.Habit NO_HABIT = Task.Habit.none(-1);

    private final PlanProblem problem;
    private final HorizonMinutes minutes;
    private final Habits habits;
    private final Yields yields;
    private final Sites sites = new Sites();
    private final List<Machine> machines;
    private final List<Person> people;
    private final List<OpenTime> shifts;
    private final int days;
    private final Drivers drivers;
    private final Map<List<Object>, OpenTime> openTimes = new HashMap<>();
    private final Map<Habits.Key, Integer> ids = new HashMap<>();

    private ShopBuilder(PlanProblem problem) {
        this.problem = problem;
        minutes = HorizonMinutes.of(problem.horizon());
        habits = Habits.of(problem);
        yields = new Yields(problem);
        machines = problem.crew().machines();
        people = problem.crew().people();
        Shifts worked = Shifts.of(problem);
        shifts = people.stream().map(worked::of).toList();
        days = worked.days();
        drivers = Drivers.of(problem.crew());
        for (Job job : problem.jobs()) {
            for (Stage stage : job.recipe().stages()) {
                ids.put(new Habits.Key(job.name(), stage.name()), ids.size());
            }
        }
    }

    /** Jobs must be in order: pinned ones first. */
    public static Shop build(PlanProblem problem) {
        return new ShopBuilder(problem).shop();
    }

    private Shop shop() {
        List<Item> items = problem.jobs().stream().map(this::item).toList();
        Function<Machine, GeoPoint> places = Standing.ofMachines(problem);
        int[] standing =
                machines.stream().mapToInt(m -> sites.of(places.apply(m))).toArray();
        int[] being = people();
        Shop.Prices prices = new Shop.Prices(
                problem.prices().drivingHaPerHour() / 60,
                problem.prices().overtimeHaPerHour() / 60);
        return new Shop(
                minutes.notBefore(problem.asOf()),
                sites.ways(problem.crew()),
                new Shop.Start(standing, being, shifts, days, seeders()),
                items,
                prices,
                yields.stock());
    }

    private Shop.Seeders seeders() {
        return new Shop.Seeders(
                machines.stream().mapToInt(yields::held).toArray(),
                machines.stream()
                        .mapToInt(m -> HorizonMinutes.length(m.mixChange()))
                        .toArray());
    }

    /** Where people are; below zero where nothing is known. */
    private int[] people() {
        return people.stream()
                .mapToInt(p -> Optional.ofNullable(problem.standing().get(p.name()))
                        .map(sites::of)
                        .orElse(-1))
                .toArray();
    }

    private Item item(Job job) {
        OpenStages stages = OpenStages.of(job);
        List<Task> going =
                stages.underWay().flatMap(r -> going(stages, r)).map(List::of).orElse(List.of());
        List<Chain> chains = chains(stages, going.isEmpty());
        return new Item(
                job.field().status().pinnedFirst(),
                going,
                chains,
                chains.get(0).tasks().stream()
                        .filter(t -> t.seeds().isPresent())
                        .findFirst()
                        .map(SeedWaits::of)
                        .orElse(new int[] {0}),
                yields.keeping(job));
    }

    private Optional<Task> going(OpenStages stages, StageRecord record) {
        Optional<Machine> machine = UnderWay.on(stages.job(), problem);
        return machine.map(m -> {
            Task whole = task(stages, stages.goingIndex());
            int left = UnderWay.minutesLeft(
                    WorkTime.minutes(
                            m, stages.job(), stages.stage(stages.goingIndex()).operation()),
                    record,
                    problem.asOf());
            List<Task.Hand> hands = whole.hands().stream()
                    .filter(h -> machines.get(h.machine()).equals(m))
                    .map(h -> new Task.Hand(h.machine(), h.person(), left, h.open()))
                    .toList();
            return new Task(
                    whole.stage(), whole.site(), whole.waits(), hands, whole.seeds(), NO_HABIT);
        });
    }

    private List<Chain> chains(OpenStages stages, boolean fresh) {
        List<Chain> ways = new ArrayList<>();
        int from = fresh && stages.underWay().isPresent() ? stages.goingIndex() : stages.next();
        ways.add(chain(stages, from));
        while (fresh && from > 0 && ways.get(ways.size() - 1).latest() != Task.NO_LIMIT) {
            from--;
            ways.add(chain(stages, from));
        }
        return ways;
    }

    private Chain chain(OpenStages stages, int from) {
        Instant earliest = problem.asOf();
        Optional<Instant> held = stages.job().field().status().heldUntil();
        if (held.isPresent() && held.get().isAfter(earliest)) {
            earliest = held.get();
        }
        if (from < stages.count() && stages.doneBefore(from).isPresent()) {
            Instant waited =
                    stages.doneBefore(from).get().plus(stages.stage(from).leastWait());
            earliest = waited.isAfter(earliest) ? waited : earliest;
        }
        int latest = from < stages.count()
                ? stages.latestStart(from).map(minutes::notAfter).orElse(Task.NO_LIMIT)
                : Task.NO_LIMIT;
        List<Task> tasks = new ArrayList<>();
        for (int i = from; i < stages.count(); i++) {
            tasks.add(task(stages, i));
        }
        return new Chain(minutes.notBefore(earliest), latest, tasks);
    }

    private Task task(OpenStages stages, int index) {
        Job job = stages.job();
        Stage stage = stages.stage(index);
        boolean seeds = stage.operation() == Operation.SEED;
        int greatest = stage.greatestWait().map(HorizonMinutes::length).orElse(Task.NO_LIMIT);
        BitSet spared = stage.limits().rainDoesIt() ? job.firmedByRain() : new BitSet();
        return new Task(
                index,
                sites.of(job.arrival()),
                new Task.Waits(HorizonMinutes.length(stage.leastWait()), greatest, spared),
                hands(job, stage),
                seeds ? Optional.of(yields.of(job)) : Optional.empty(),
                habit(job, stage));
    }

    private List<Task.Hand> hands(Job job, Stage stage) {
        List<Task.Hand> hands = new ArrayList<>();
        BitSet closed = yields.closed(job, stage.operation());
        for (int m = 0; m < machines.size(); m++) {
            Machine machine = machines.get(m);
            if (!machine.operations().contains(stage.operation())) {
                continue;
            }
            int work = WorkTime.minutes(machine, job, stage.operation());
            for (int p = 0; p < people.size(); p++) {
                if (drivers.may(m, p)) {
                    hands.add(new Task.Hand(m, p, work, open(p, closed)));
                }
            }
        }
        return hands;
    }

    private OpenTime open(int person, BitSet closed) {
        Object shift = people.get(person).absences().isEmpty() ? "crew" : person;
        return openTimes.computeIfAbsent(
                List.of(shift, closed),
                k -> shifts.get(person).within(Yields.openSpans(closed, problem.hours())));
    }

    private Task.Habit habit(Job job, Stage stage) {
        int id = id(new Habits.Key(job.name(), stage.name()));
        return habits.of(job.name(), stage.name())
                .map(k -> new Task.Habit(
                        id,
                        machine(k.machine()),
                        k.before().equals(Habits.NOTHING) ? -1 : id(k.before()),
                        told(k.start()),
                        k.priceHa()))
                .orElse(Task.Habit.none(id));
    }

    private Task.Habit.Told told(Instant start) {
        ZoneId zone = problem.crew().zone();
        LocalDate day = LocalDate.ofInstant(start, zone);
        return new Task.Habit.Told(
                minutes.notAfter(start),
                minutes.notBefore(day.atStartOfDay(zone).toInstant()),
                minutes.notBefore(day.plusDays(1).atStartOfDay(zone).toInstant()));
    }

    private int id(Habits.Key key) {
        return ids.getOrDefault(key, -1);
    }

    private int machine(String name) {
        return machines.stream().map(Machine::name).toList().indexOf(name);
    }

    /** Which machines to name first: a plan must not depend on the order of input. */
    public static PlanProblem inOrder(PlanProblem problem, List<Job> jobs) {
        List<Job> sorted = jobs.stream()
                .sorted(Comparator.comparing((Job j) -> !j.field().status().pinnedFirst())
                        .thenComparing(Job::name))
                .toList();
        return problem.withJobs(sorted);
    }
}
