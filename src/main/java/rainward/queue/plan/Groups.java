package rainward.queue.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import rainward.farm.Crew;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.Person;
import rainward.queue.model.ShopBuilder;
import rainward.queue.problem.Job;
import rainward.queue.problem.OpenStages;
import rainward.queue.problem.PlanProblem;
import rainward.queue.problem.Standing;
import rainward.queue.shop.Placement;
import rainward.queue.shop.Task;

/**
 * Splits a large problem by geography into groups that are searched apart: fields are cut in two
 * along the longer side of their extent, machines of each kind and people with them, until a group
 * holds about {@link #FIELDS} fields or a kind of machine cannot be shared out any more.
 */
final class Groups {

    /** A group this large is searched as well as one can in a second; found by experiment. */
    static final int FIELDS = 40;

    private Groups() {}

    static List<PlanProblem> of(PlanProblem problem) {
        boolean going = problem.jobs().stream()
                .anyMatch(j -> OpenStages.of(j).underWay().isPresent());
        int wanted = (problem.jobs().size() + FIELDS - 1) / FIELDS;
        int possible = going || !problem.stockHa().isEmpty() ? 1 : fewestOfAKind(problem.crew());
        List<PlanProblem> groups = new ArrayList<>();
        split(problem, Math.max(1, Math.min(wanted, possible)), groups);
        return groups;
    }

    /** Machines that can do the same count as one kind; people must be enough, too. */
    private static int fewestOfAKind(Crew crew) {
        int machines = byKind(crew).values().stream().mapToInt(List::size).min().orElse(1);
        boolean anybody = crew.people().stream().allMatch(p -> p.machines().isEmpty());
        return anybody ? Math.min(machines, crew.people().size()) : 1;
    }

    private static Map<String, List<Machine>> byKind(Crew crew) {
        return crew.machines().stream()
                .collect(Collectors.groupingBy(
                        m -> m.operations().stream().sorted().toList().toString(),
                        TreeMap::new,
                        Collectors.toList()));
    }

    private static void split(PlanProblem problem, int count, List<PlanProblem> groups) {
        if (count == 1) {
            groups.add(problem);
            return;
        }
        int half = count / 2;
        double share = (double) half / count;
        ToDoubleFunction<GeoPoint> along = longerSide(problem.jobs());
        List<Job> fields = sorted(problem.jobs(), j -> along.applyAsDouble(j.arrival()));
        Function<Machine, GeoPoint> places = Standing.ofMachines(problem);
        List<Machine> near = new ArrayList<>();
        List<Machine> far = new ArrayList<>();
        for (List<Machine> kind : byKind(problem.crew()).values()) {
            List<Machine> inLine = sorted(kind, m -> along.applyAsDouble(places.apply(m)));
            int cut = Math.max(1, (int) Math.round(share * kind.size()));
            near.addAll(inLine.subList(0, cut));
            far.addAll(inLine.subList(cut, inLine.size()));
        }
        List<Person> people = problem.crew().people();
        int hands = Math.max(1, (int) Math.round(share * people.size()));
        int cut = (int) Math.round(share * fields.size());
        split(part(problem, fields.subList(0, cut), near, people.subList(0, hands)), half, groups);
        split(
                part(
                        problem,
                        fields.subList(cut, fields.size()),
                        far,
                        people.subList(hands, people.size())),
                count - half,
                groups);
    }

    private static <T> List<T> sorted(List<T> all, ToDoubleFunction<T> key) {
        return all.stream().sorted(Comparator.comparingDouble(key)).toList();
    }

    private static ToDoubleFunction<GeoPoint> longerSide(List<Job> jobs) {
        double north = extent(jobs, GeoPoint::latitudeDeg);
        double middle = jobs.get(jobs.size() / 2).arrival().latitudeDeg();
        double east = extent(jobs, GeoPoint::longitudeDeg) * Math.cos(Math.toRadians(middle));
        return north > east ? GeoPoint::latitudeDeg : GeoPoint::longitudeDeg;
    }

    private static double extent(List<Job> jobs, ToDoubleFunction<GeoPoint> side) {
        var range = jobs.stream().map(Job::arrival).mapToDouble(side).summaryStatistics();
        return range.getMax() - range.getMin();
    }

    private static PlanProblem part(
            PlanProblem whole, List<Job> jobs, List<Machine> machines, List<Person> people) {
        Crew share = whole.crew().with(people, machines);
        return ShopBuilder.inOrder(whole.withCrew(share), jobs);
    }

    /** A placement with machine and person as indices of the whole crew. */
    static Placement inWhole(Placement placement, PlanProblem group, PlanProblem whole) {
        if (group.crew().equals(whole.crew())) {
            return placement;
        }
        Task.Hand hand = placement.hand();
        int machine = index(
                whole.crew().machines(), group.crew().machines(), hand.machine(), Machine::name);
        int person =
                index(whole.crew().people(), group.crew().people(), hand.person(), Person::name);
        return new Placement(
                placement.item(),
                placement.task(),
                new Task.Hand(machine, person, hand.minutes(), hand.open()),
                placement.start(),
                placement.finish(),
                placement.drive(),
                placement.setting(),
                placement.option());
    }

    private static <T> int index(
            List<T> whole, List<T> group, int inGroup, Function<T, String> name) {
        return whole.stream().map(name).toList().indexOf(name.apply(group.get(inGroup)));
    }
}
