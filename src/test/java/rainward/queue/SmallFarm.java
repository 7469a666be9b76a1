package rainward.queue;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import rainward.farm.Crew;
import rainward.farm.CrewHours;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.FieldStatus;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.farm.Person;
import rainward.farm.Recipe;
import rainward.farm.SeedingMethod;
import rainward.farm.SoilTexture;
import rainward.farm.Stage;
import rainward.farm.StageLimits;
import rainward.farm.Window;

/** A farm that a test can take in at a glance: machines that work 1 ha an hour, shifts 07 to 18. */
final class SmallFarm {

    static final ZoneId ZONE = ZoneId.of("America/Detroit");

    /** Monday 00:00 in the farm's zone. */
    static final Instant MONDAY = Instant.parse("2026-07-13T04:00:00Z");

    static final GeoPoint YARD = new GeoPoint(42.0, -85.0);
    static final int HOURS = 5 * 24;

    static final Machine TILLER = machine("tiller", Operation.TILL);
    static final Machine SEEDER = machine("seeder", Operation.SEED);
    static final Machine ROLLER = machine("roller", Operation.FIRM);

    final List<Job> jobs = new ArrayList<>();
    final List<Machine> machines = new ArrayList<>(List.of(TILLER, SEEDER));
    final List<Person> people = new ArrayList<>(List.of(person("Ann"), person("Bo")));
    Instant asOf = MONDAY.plus(Duration.ofHours(6));
    CrewHours hours = new CrewHours(
            LocalTime.of(7, 0),
            LocalTime.of(18, 0),
            Duration.ZERO,
            EnumSet.allOf(DayOfWeek.class),
            false);
    PlanProblem.Prices prices = new PlanProblem.Prices(0, 0, 0);
    Optional<Plan> lastOrder = Optional.empty();
    Map<String, Double> stockHa = Map.of();

    static Person person(String name, String... machines) {
        return new Person(name, Set.of(machines), List.of());
    }

    static Machine machine(String name, Operation... operations) {
        return new Machine(
                name,
                Set.of(operations),
                new Machine.WorkPace(2, 5, 1, 0),
                new Machine.Travel(30, Duration.ofMinutes(10), YARD),
                Optional.empty(),
                Machine.MassClass.LIGHT);
    }

    static Stage stage(String name, Operation operation, int leastH, int greatestH) {
        return new Stage(
                name,
                operation,
                Duration.ofHours(leastH),
                greatestH < 0 ? Optional.empty() : Optional.of(Duration.ofHours(greatestH)),
                operation == Operation.SEED
                        ? StageLimits.seedingBy(SeedingMethod.ROLLED)
                        : StageLimits.SOIL_ONLY);
    }

    static final Recipe TILL_SEED = new Recipe(
            "till and seed",
            List.of(stage("till", Operation.TILL, 0, -1), stage("seed", Operation.SEED, 0, 48)));

    static final Recipe SEED_ONLY =
            new Recipe("seed", List.of(stage("seed", Operation.SEED, 0, -1)));

    /** Worth 1 at the start of the horizon, a thousandth less each hour. */
    static double slowlyFalling(int hour) {
        return 1 - 0.001 * hour;
    }

    /** A field under construction. */
    static final class Plot {
        String name = "F1";
        double areaHa = 2;
        double kmNorth = 5;
        double priority = 1;
        Recipe recipe = TILL_SEED;
        FieldStatus status = FieldStatus.UNTOUCHED;
        IntToDoubleFunction worth = SmallFarm::slowlyFalling;
        final Map<Operation, BitSet> stopped = new EnumMap<>(Operation.class);
        BitSet firmed = new BitSet();

        Plot stop(Operation operation, int fromHour, int toHour) {
            stopped.computeIfAbsent(operation, o -> new BitSet()).set(fromHour, toHour);
            return this;
        }

        Job job() {
            GeoPoint place = new GeoPoint(YARD.latitudeDeg() + kmNorth / 111.2, -85.0);
            Field field = new Field(
                    name,
                    "property " + kmNorth,
                    place,
                    areaHa,
                    new Field.Ground(new SoilTexture(0.4, 0.2, 2.5), 0.02),
                    new Field.Wish(List.of("brassica"), recipe.name(), priority));
            double[] worths =
                    IntStream.range(0, HOURS).mapToDouble(worth::applyAsDouble).toArray();
            return new Job(
                    new FieldCase(field, status),
                    recipe,
                    place,
                    List.of(new Job.MixOption("brassica", worths, worths)),
                    stopped,
                    firmed);
        }
    }

    static Plot plot(String name, double areaHa) {
        Plot plot = new Plot();
        plot.name = name;
        plot.areaHa = areaHa;
        return plot;
    }

    SmallFarm with(Plot... plots) {
        Arrays.stream(plots).map(Plot::job).forEach(jobs::add);
        return this;
    }

    PlanProblem problem() {
        return new PlanProblem(
                asOf,
                new Window(MONDAY, MONDAY.plus(Duration.ofHours(HOURS))),
                new Crew(ZONE, hours, people, machines, 1.3),
                jobs,
                prices,
                lastOrder,
                stockHa);
    }

    /** An instant as hours from Monday 00:00. */
    static double hour(Instant instant) {
        return Duration.between(MONDAY, instant).toSeconds() / 3600.0;
    }
}
