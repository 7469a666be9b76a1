package rainward.queue.sample;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rainward.farm.Crew;
import rainward.farm.CrewHours;
import rainward.farm.DayClock;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.farm.Person;
import rainward.farm.UnitSystem;

/** Invented crews: a spreader, two tillage tractors and a seeder each, four people. */
final class SampleCrew {

    private static final ZoneId ZONE = ZoneId.of("America/Detroit");
    private static final Duration HITCH = Duration.ofMinutes(15);

    private SampleCrew() {}

    static Crew of(GeneratedDays.Kind kind, int crews, List<GeoPoint> places) {
        double pace = kind == GeneratedDays.Kind.CAPACITY_TO_SPARE ? 2.2 : 1;
        List<Machine> machines = new ArrayList<>();
        List<Person> people = new ArrayList<>();
        for (int c = 0; c < crews; c++) {
            GeoPoint yard = places.get(c * places.size() / crews);
            String end = crews == 1 ? "" : " " + (c + 1);
            machines.addAll(machines(kind, pace, yard, end));
            int hands = kind == GeneratedDays.Kind.ONE_CREW_SHORT ? 3 : 4;
            for (int p = 0; p < hands; p++) {
                people.add(new Person("hand " + (char) ('A' + p) + end, Set.of(), List.of()));
            }
        }
        return new Crew(new DayClock(ZONE, UnitSystem.METRIC), hours(), people, machines, 1.3);
    }

    private static CrewHours hours() {
        return new CrewHours(
                LocalTime.of(7, 0),
                LocalTime.of(18, 0),
                Duration.ofHours(2),
                Set.of(
                        DayOfWeek.MONDAY,
                        DayOfWeek.TUESDAY,
                        DayOfWeek.WEDNESDAY,
                        DayOfWeek.THURSDAY,
                        DayOfWeek.FRIDAY,
                        DayOfWeek.SATURDAY),
                true);
    }

    private static List<Machine> machines(
            GeneratedDays.Kind kind, double pace, GeoPoint yard, String end) {
        Machine spreader = machine(
                "spreader" + end,
                Set.of(Operation.SPREAD),
                new Machine.WorkPace(10, Math.min(30, 8 * pace), 0.65, 0.4),
                yard,
                Optional.of(new Machine.Refill(2.5, Duration.ofMinutes(25))));
        Machine tiller = machine(
                "tiller" + end,
                Set.of(Operation.TILL, Operation.DISK),
                new Machine.WorkPace(2.4, 4.5 * pace, 0.8, 0.5),
                yard,
                Optional.empty());
        Machine disk = machine(
                "disk" + end,
                Set.of(Operation.TILL, Operation.DISK),
                new Machine.WorkPace(2.8, 5 * pace, 0.8, 0.5),
                yard,
                Optional.empty());
        Machine seeder = machine(
                "seeder" + end,
                Set.of(Operation.SEED),
                new Machine.WorkPace(2.5, 6 * pace, 0.7, 0.5),
                yard,
                Optional.of(new Machine.Refill(3, Duration.ofMinutes(20))));
        return kind == GeneratedDays.Kind.ONE_CREW_SHORT
                ? List.of(spreader, disk, seeder)
                : List.of(spreader, tiller, disk, seeder);
    }

    private static Machine machine(
            String name,
            Set<Operation> operations,
            Machine.WorkPace pace,
            GeoPoint yard,
            Optional<Machine.Refill> refill) {
        return new Machine(
                name,
                operations,
                pace,
                new Machine.Travel(25, HITCH, yard),
                refill,
                Machine.MassClass.MEDIUM,
                Machine.USUAL_MIX_CHANGE);
    }
}
