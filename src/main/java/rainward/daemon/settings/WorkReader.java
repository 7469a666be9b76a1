package rainward.daemon.settings;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rainward.farm.Crew;
import rainward.farm.CrewHours;
import rainward.farm.DayClock;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.NearestName;
import rainward.farm.Operation;
import rainward.farm.Person;
import rainward.farm.Quantity;
import rainward.farm.Recipe;
import rainward.farm.Species;
import rainward.farm.Window;

/**
 * Who works with what, and how a field gets from stubble to seed.
 *
 * @param clock of the farm
 * @param species by name
 */
record WorkReader(DayClock clock, Map<String, Species> species) {

    private static final List<DayOfWeek> MONDAY_TO_SATURDAY =
            List.of(DayOfWeek.values()).subList(0, 6);

    Settings.Work work(Section root) {
        List<Machine> machines = machines(root);
        Crew crew = crew(root, people(root, machines), machines);
        List<Recipe> recipes = new RecipeReader(machines).recipes(root);
        return new Settings.Work(crew, recipes, new MixReader(species).mixes(root));
    }

    private Crew crew(Section root, List<Person> people, List<Machine> machines) {
        Section section = root.table("crew");
        LocalTime start = section.time("start", LocalTime.of(7, 0));
        LocalTime end = section.time("end", LocalTime.of(19, 0));
        if (!end.isAfter(start)) {
            section.wrong("end", "must be later than start, " + start);
        }
        CrewHours hours = new CrewHours(
                start.isBefore(end) ? start : LocalTime.MIN,
                start.isBefore(end) ? end : LocalTime.MAX,
                section.span(
                        "overtime",
                        Bounds.Span.usually(
                                Duration.ofHours(2), Duration.ZERO, Duration.ofHours(8))),
                Set.copyOf(days(section)),
                section.flag("daylight_only", true));
        double roadFactor = section.number("road_factor", Bounds.Real.usually(1.3, 1, 3));
        section.end();
        return new Crew(clock, hours, people, machines, roadFactor);
    }

    private static List<DayOfWeek> days(Section section) {
        return section.choices("days", DayOfWeek.class, MONDAY_TO_SATURDAY);
    }

    private List<Machine> machines(Section root) {
        List<Section> sections = root.tables("machine");
        if (sections.isEmpty()) {
            root.wrong("machine", "name at least one machine, each under [[machine]]");
        }
        List<Machine> machines = sections.stream().map(WorkReader::machine).toList();
        once(sections, machines.stream().map(Machine::name).toList());
        return machines;
    }

    private static Machine machine(Section section) {
        String name = section.name("name");
        Set<Operation> operations = operations(section);
        Machine read = new Machine(
                name,
                operations,
                pace(section),
                travel(section),
                refill(section),
                section.choice("weight", Machine.MassClass.MEDIUM),
                mixChange(section, operations));
        section.end();
        return read;
    }

    private static Set<Operation> operations(Section section) {
        List<Operation> named = section.choices("operations", Operation.class, List.of());
        return named.isEmpty() ? Set.of(Operation.SEED) : Set.copyOf(named);
    }

    private static Machine.WorkPace pace(Section section) {
        return new Machine.WorkPace(
                section.amount("width", Bounds.Amount.given(Quantity.WIDTH, 0.3, 60)),
                section.amount("speed", Bounds.Amount.given(Quantity.SPEED, 0.5, 60)),
                section.share("efficiency", new Bounds.Real(Optional.empty(), 0.05, 1)),
                section.span(
                                        "turn",
                                        Bounds.Span.usually(
                                                Duration.ofSeconds(20),
                                                Duration.ZERO,
                                                Duration.ofMinutes(10)))
                                .toMillis()
                        / 60_000.0);
    }

    private static Machine.Travel travel(Section section) {
        return new Machine.Travel(
                section.amount("road_speed", Bounds.Amount.given(Quantity.SPEED, 2, 120)),
                section.span(
                        "hitch",
                        Bounds.Span.usually(
                                Duration.ofMinutes(15), Duration.ZERO, Duration.ofHours(4))),
                place(section.table("stands_at")));
    }

    static GeoPoint place(Section place) {
        GeoPoint read = new GeoPoint(
                place.number("latitude", new Bounds.Real(Optional.empty(), -90, 90)),
                place.number("longitude", new Bounds.Real(Optional.empty(), -180, 180)));
        place.end();
        return read;
    }

    private static Optional<Machine.Refill> refill(Section section) {
        Optional<Double> areaHa =
                section.maybeAmount("refill_after", Bounds.Amount.given(Quantity.AREA, 0.1, 400));
        Optional<Duration> stop = section.maybeSpan(
                "refill_stop",
                Bounds.Span.usually(Machine.Refill.USUAL_STOP, Duration.ZERO, Duration.ofHours(4)));
        if (areaHa.isEmpty() && stop.isPresent()) {
            section.wrong(
                    "refill_after",
                    "must say after how much ground it is filled again, since"
                            + " refill_stop is given");
        }
        return areaHa.map(area -> new Machine.Refill(area, stop.orElse(Machine.Refill.USUAL_STOP)));
    }

    private static Duration mixChange(Section section, Set<Operation> operations) {
        Optional<Duration> given = section.maybeSpan(
                "mix_change",
                Bounds.Span.usually(Machine.USUAL_MIX_CHANGE, Duration.ZERO, Duration.ofHours(4)));
        if (given.isPresent() && !operations.contains(Operation.SEED)) {
            section.wrong("mix_change", "must be left out where the machine does not seed");
        }
        return given.orElse(Machine.USUAL_MIX_CHANGE);
    }

    private List<Person> people(Section root, List<Machine> machines) {
        List<Section> sections = root.tables("person");
        if (sections.isEmpty()) {
            root.wrong("person", "name at least one person, each under [[person]]");
        }
        List<Person> people =
                sections.stream().map(section -> person(section, machines)).toList();
        once(sections, people.stream().map(Person::name).toList());
        return people;
    }

    private Person person(Section section, List<Machine> machines) {
        List<String> known = machines.stream().map(Machine::name).toList();
        List<String> runs = section.names("machines");
        for (String machine : runs) {
            if (!known.contains(machine)) {
                section.wrong(
                        "machines",
                        "there is no machine \"" + machine + "\", "
                                + NearestName.of(machine, known)
                                        .map(near -> "the nearest is \"" + near + "\"")
                                        .orElse("known are " + String.join(", ", known)));
            }
        }
        Person read = new Person(section.name("name"), Set.copyOf(runs), absences(section));
        section.end();
        return read;
    }

    private List<Window> absences(Section section) {
        List<Window> absences = new ArrayList<>();
        for (Section away : section.tables("away")) {
            Optional<LocalDate> from = away.date("from");
            Optional<LocalDate> to = away.date("to");
            away.end();
            if (from.isPresent() && to.isPresent() && to.get().isBefore(from.get())) {
                away.wrong("to", "must be the same day as from, " + from.get() + ", or later");
            } else if (from.isPresent() && to.isPresent()) {
                absences.add(Window.ofDays(from.get(), to.get(), clock.zone()));
            }
        }
        return absences;
    }

    /** Names are what everything else refers to. */
    static void once(List<Section> sections, List<String> names) {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < names.size(); i++) {
            if (!names.get(i).equals(Section.NAMELESS) && !seen.add(names.get(i))) {
                sections.get(i)
                        .wrong("name", "another one has this name already; names must differ");
            }
        }
    }
}
