package rainward.replay.crew;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rainward.farm.Crew;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.Mix;
import rainward.farm.Operation;
import rainward.farm.Person;
import rainward.queue.pace.Roads;
import rainward.queue.pace.WorkTime;

/** One crew through one season, a quarter of an hour at a time. */
public final class CrewSeason {

    private static final Duration STEP = Duration.ofMinutes(15);

    /**
     * Tries of the planner with new weather, a tenth of them in between; the service's second of
     * thinking has some five times more, and finds orders worth 3 in 100 more on generated days.
     */
    public static final long TRIES = 30_000;

    private final World world;
    private final Foreman foreman;
    private final List<FieldWork> fields;
    private final List<Rig> rigs;
    private final List<SeasonLog.Sown> sown = new ArrayList<>();
    private double roadKm;
    private double workedHours;

    private CrewSeason(World world, Foreman foreman) {
        this.world = world;
        this.foreman = foreman;
        this.fields = world.scene().fields().stream()
                .map(f -> new FieldWork(f, world.scene().roster().recipeOf(f).orElseThrow()))
                .toList();
        this.rigs = crew().machines().stream()
                .sorted(Comparator.comparing(m -> !m.operations().contains(Operation.SEED)))
                .map(Rig::new)
                .toList();
    }

    /** A machine in the season. */
    private static final class Rig {
        private final Machine machine;
        private GeoPoint at;
        private Optional<String> holds = Optional.empty();
        private Optional<Foreman.Wanted> item = Optional.empty();
        private Optional<Person> person = Optional.empty();
        private Instant arrives = Instant.EPOCH;

        Rig(Machine machine) {
            this.machine = machine;
            this.at = machine.travel().start();
        }
    }

    /** Runs a season by a policy, with so many tries of the planner each time. */
    public static SeasonLog run(World world, Policy policy, long tries) {
        Rounds rounds = new Rounds(world);
        Foreman foreman = policy.simple()
                ? new Ranking(policy, world, rounds)
                : new Planned(rounds, policy, tries);
        return new CrewSeason(world, foreman).run();
    }

    private Crew crew() {
        return world.scene().roster().crew();
    }

    private SeasonLog run() {
        int idleDays = 0;
        Instant morning = world.season().from();
        for (; morning.isBefore(world.season().to()); morning = nextMorning(morning)) {
            if (fields.stream().noneMatch(FieldWork::open)) {
                break;
            }
            if (!crew().hours().days().contains(day(morning).getDayOfWeek())) {
                continue;
            }
            foreman.consider(morning, fields);
            double before = workedHours;
            shift(morning);
            idleDays += workedHours == before ? 1 : 0;
        }
        return new SeasonLog(sown, roadKm, idleDays, foreman.changes());
    }

    private LocalDate day(Instant instant) {
        return LocalDate.ofInstant(instant, crew().zone());
    }

    private Instant nextMorning(Instant morning) {
        return morning.atZone(crew().zone()).plusDays(1).toInstant();
    }

    private void shift(Instant morning) {
        ZonedDateTime day = morning.atZone(crew().zone());
        Instant start = day.with(crew().hours().start()).toInstant();
        Instant end = day.with(crew().hours().end()).toInstant();
        Instant noon = day.withHour(12).toInstant();
        for (Instant now = start; now.isBefore(end); now = now.plus(STEP)) {
            if (now.equals(noon)) {
                foreman.consider(now, fields);
            } else if (now.getEpochSecond() % 3600 == 0) {
                foreman.goOn(now, fields);
            }
            for (Rig rig : rigs) {
                step(rig, now);
            }
        }
        rigs.forEach(rig -> release(rig, end));
    }

    private static void release(Rig rig, Instant now) {
        rig.item.ifPresent(item -> item.work().leave(now));
        rig.item = Optional.empty();
        rig.person = Optional.empty();
    }

    private void step(Rig rig, Instant now) {
        if (world.luck().broken(rig.machine.name(), now)) {
            release(rig, now);
            return;
        }
        boolean stopped = rig.item.filter(item -> stops(item.work(), now)).isPresent();
        if (stopped) {
            release(rig, now);
        }
        if (rig.item.isEmpty()) {
            take(rig, now);
        }
        rig.item.ifPresent(item -> work(rig, item, now));
    }

    private boolean stops(FieldWork work, Instant now) {
        return world.stops(work.field().name(), work.nextStage().operation(), now);
    }

    private void take(Rig rig, Instant now) {
        List<FieldWork> open = fields.stream()
                .filter(f -> f.due(now))
                .filter(f -> rig.machine.operations().contains(f.nextStage().operation()))
                .filter(f -> !stops(f, now))
                .toList();
        if (open.isEmpty()) {
            return;
        }
        Optional<Person> free = freePerson(rig.machine);
        if (free.isEmpty()) {
            return;
        }
        foreman.wanted(rig.machine, rig.at, now, open).stream()
                .filter(item -> mix(item, now).isPresent())
                .findFirst()
                .ifPresent(item -> {
                    rig.item = Optional.of(item);
                    rig.person = free;
                    item.work().begin(now, rig.machine.name());
                    drive(rig, item.work(), now);
                    set(rig, item, now);
                });
    }

    /** Whoever can run the fewest other machines goes first. */
    private Optional<Person> freePerson(Machine machine) {
        Set<String> busy = new HashSet<>();
        rigs.forEach(r -> r.person.ifPresent(p -> busy.add(p.name())));
        return crew().people().stream()
                .filter(p -> !busy.contains(p.name()) && p.canRun(machine.name()))
                .min(Comparator.comparingInt(p -> p.machines().isEmpty()
                        ? Integer.MAX_VALUE
                        : p.machines().size()));
    }

    private void drive(Rig rig, FieldWork work, Instant now) {
        GeoPoint to = world.property(work.field().property()).place();
        if (!rig.at.equals(to)) {
            roadKm += rig.at.distanceKm(to) * crew().roadFactor();
        }
        int minutes = Roads.minutes(rig.machine, rig.at, to, crew().roadFactor());
        rig.arrives = now.plus(Duration.ofMinutes(minutes));
        rig.at = to;
    }

    /** A seeder that holds another mix is emptied and set anew when it is there. */
    private void set(Rig rig, Foreman.Wanted item, Instant now) {
        if (item.work().nextStage().operation() != Operation.SEED) {
            return;
        }
        Optional<String> mix = mix(item, now);
        if (rig.holds.isPresent() && !rig.holds.equals(mix)) {
            rig.arrives = rig.arrives.plus(rig.machine.mixChange());
        }
        rig.holds = mix;
    }

    /** The mix that goes in: the one wanted, else the first in season; any where none is sown. */
    private Optional<String> mix(Foreman.Wanted item, Instant now) {
        FieldWork work = item.work();
        if (work.nextStage().operation() != Operation.SEED) {
            return Optional.of("");
        }
        return world.scene().roster().mixesOf(work.field()).stream()
                .filter(m -> item.mix().isEmpty() || item.mix().get().equals(m.name()))
                .filter(m -> m.season().allowsSowing(day(now)))
                .map(Mix::name)
                .findFirst();
    }

    private void work(Rig rig, Foreman.Wanted item, Instant now) {
        Instant end = now.plus(STEP);
        if (!rig.arrives.isBefore(end)) {
            return;
        }
        Instant from = rig.arrives.isAfter(now) ? rig.arrives : now;
        double minutes = Duration.between(from, end).toSeconds() / 60.0;
        FieldWork work = item.work();
        String field = work.field().name();
        double whole = WorkTime.minutes(rig.machine, work.field().areaHa(), Optional.empty())
                * world.luck().slowness(field, work.nextStage().name());
        workedHours += minutes / 60;
        if (work.work(minutes, whole)) {
            boolean seeding = work.nextStage().operation() == Operation.SEED;
            Optional<String> mix = seeding ? mix(item, now) : Optional.empty();
            work.finish(end, mix);
            if (seeding) {
                sown.add(new SeasonLog.Sown(work.asCase(), mix.orElseThrow(), end, item.chance()));
            }
            rig.item = Optional.empty();
            rig.person = Optional.empty();
        }
    }
}
