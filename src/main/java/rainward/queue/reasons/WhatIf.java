package rainward.queue.reasons;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import rainward.farm.Crew;
import rainward.farm.CrewHours;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.Machine;
import rainward.farm.Person;
import rainward.queue.problem.Job;
import rainward.queue.problem.PlanProblem;

/**
 * A planning problem with something changed to see what it would bring; nothing else is touched.
 *
 * @param problem after all changes that could be made
 * @param faults what could not be read, one sentence each
 */
public record WhatIf(PlanProblem problem, List<String> faults) {

    private static final String WORDS =
            "say hold FIELD [until DATE], drop FIELD, pin FIELD, add MACHINE, add person,"
                    + " without NAME, start HH:MM, end HH:MM or overtime HOURS";

    public WhatIf {
        faults = List.copyOf(faults);
    }

    /**
     * Makes changes that are written one after another, with semicolons between: {@code hold F12;
     * add tiller; start 06:00}.
     */
    public static WhatIf of(PlanProblem problem, String edits) {
        WhatIf result = new WhatIf(problem, List.of());
        for (String edit : edits.split(";", -1)) {
            if (!edit.isBlank()) {
                result = result.edit(edit.strip());
            }
        }
        return result;
    }

    private WhatIf edit(String edit) {
        String[] parts = edit.split("\\s+", 2);
        String rest = parts.length > 1 ? parts[1].strip() : "";
        try {
            return switch (parts[0]) {
                case "hold" -> hold(rest);
                case "drop" -> status(rest, WhatIf::dropped);
                case "pin" -> status(rest, WhatIf::pinned);
                case "add" -> add(rest);
                case "without" -> without(rest);
                case "start" -> hours(h -> with(h, LocalTime.parse(rest), h.end(), h.overtime()));
                case "end" -> hours(h -> with(h, h.start(), LocalTime.parse(rest), h.overtime()));
                case "overtime" -> hours(h -> with(h, h.start(), h.end(), hoursOf(rest)));
                default -> fault("cannot read '" + edit + "'; " + WORDS);
            };
        } catch (DateTimeException | IllegalArgumentException e) {
            return fault("cannot do '" + edit + "': " + e.getMessage() + "; " + WORDS);
        }
    }

    private static Duration hoursOf(String text) {
        return Duration.ofMinutes(Math.round(Double.parseDouble(text) * 60));
    }

    private WhatIf fault(String words) {
        List<String> all = new ArrayList<>(faults);
        all.add(words);
        return new WhatIf(problem, all);
    }

    private WhatIf hold(String rest) {
        String[] parts = rest.split("\\s+until\\s+", 2);
        Instant until = parts.length > 1
                ? LocalDate.parse(parts[1].strip())
                        .atStartOfDay(problem.crew().zone())
                        .toInstant()
                : problem.horizon().to();
        return status(
                parts[0],
                s -> new FieldStatus(
                        s.state(), s.stages(), s.sownMix(), Optional.of(until), false));
    }

    private static FieldStatus dropped(FieldStatus s) {
        return new FieldStatus(
                FieldState.DROPPED, s.stages(), s.sownMix(), s.heldUntil(), s.pinnedFirst());
    }

    private static FieldStatus pinned(FieldStatus s) {
        return new FieldStatus(s.state(), s.stages(), s.sownMix(), Optional.empty(), true);
    }

    private WhatIf status(String typed, UnaryOperator<FieldStatus> change) {
        Named named = Named.of(typed, problem.jobs().stream().map(Job::name).toList());
        if (!named.unique()) {
            return fault(named.fault("field in the queue"));
        }
        String field = named.name();
        List<Job> jobs = problem.jobs().stream()
                .map(j -> j.name().equals(field) ? j.with(change.apply(j.field().status())) : j)
                .toList();
        return new WhatIf(problem.withJobs(jobs), faults);
    }

    private WhatIf add(String typed) {
        Crew crew = problem.crew();
        if (typed.equals("person")) {
            List<Person> people = new ArrayList<>(crew.people());
            people.add(new Person(free("person", names()), Set.of(), List.of()));
            return crew(people, crew.machines());
        }
        Named named =
                Named.of(typed, crew.machines().stream().map(Machine::name).toList());
        if (!named.unique()) {
            return fault(named.fault("machine") + "; another is added like one of these");
        }
        String name = named.name();
        List<Machine> machines = new ArrayList<>(crew.machines());
        String added = free(name, names());
        crew.machines().stream()
                .filter(m -> m.name().equals(name))
                .forEach(m -> machines.add(m.named(added)));
        List<Person> people =
                crew.people().stream().map(p -> alsoRuns(p, name, added)).toList();
        List<Job> jobs = problem.jobs().stream()
                .map(j -> j.filling(j.fillings().alsoOf(name, added)))
                .toList();
        return new WhatIf(problem.withJobs(jobs), faults).crew(people, machines);
    }

    private List<String> names() {
        List<String> names = new ArrayList<>();
        problem.crew().machines().forEach(m -> names.add(m.name()));
        problem.crew().people().forEach(p -> names.add(p.name()));
        return names;
    }

    private static String free(String name, List<String> taken) {
        int n = 2;
        while (taken.contains(name + " " + n)) {
            n++;
        }
        return name + " " + n;
    }

    private static Person alsoRuns(Person person, String known, String added) {
        if (!person.machines().contains(known)) {
            return person;
        }
        Set<String> runs = new java.util.TreeSet<>(person.machines());
        runs.add(added);
        return new Person(person.name(), runs, person.absences());
    }

    private WhatIf without(String typed) {
        Named named = Named.of(typed, names());
        if (!named.unique()) {
            return fault(named.fault("machine or person"));
        }
        String name = named.name();
        return crew(
                problem.crew().people().stream()
                        .filter(p -> !p.name().equals(name))
                        .toList(),
                problem.crew().machines().stream()
                        .filter(m -> !m.name().equals(name))
                        .toList());
    }

    private WhatIf crew(List<Person> people, List<Machine> machines) {
        return new WhatIf(problem.withCrew(problem.crew().with(people, machines)), faults);
    }

    private WhatIf hours(UnaryOperator<CrewHours> change) {
        Crew crew = problem.crew();
        Crew changed = new Crew(
                crew.clock(),
                change.apply(crew.hours()),
                crew.people(),
                crew.machines(),
                crew.roadFactor());
        return new WhatIf(problem.withCrew(changed), faults);
    }

    private static CrewHours with(
            CrewHours hours, LocalTime start, LocalTime end, Duration overtime) {
        return new CrewHours(start, end, overtime, hours.days(), hours.daylightOnly());
    }
}
