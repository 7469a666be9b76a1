package rainward.queue.plan;

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
import rainward.farm.DayClock;
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
import rainward.farm.UnitSystem;
import rainward.farm.Window;
import rainward.queue.problem.Fillings;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;

/** A farm that a test can take in at a glance: machines that work 1 ha an hour, shifts 07 to 18. */
public final class SmallFarm {

    public static final ZoneId ZONE = ZoneId.of("America/Detroit");

    /** Monday 00:00 in the farm's zone. */
    public static final Instant MONDAY = Instant.parse("2026-07-13T04:00:00Z");

    public static final GeoPoint YARD = new GeoPoint(42.0, -85.0);
    public static final int HOURS = 5 * 24;

    public static final Duration MIX_CHANGE = Duration.ofMinutes(30);

    public static final Machine TILLER = machine("tiller", Operation.TILL);
    public static final Machine SEEDER = machine("seeder", Operation.SEED);
    public static final Machine ROLLER = machine("roller", Operation.FIRM);

    public final List<Job> jobs = new ArrayList<>();
    public final List<Machine> machines = new ArrayList<>(List.of(TILLER, SEEDER));
    public final List<Person> people = new ArrayList<>(List.of(person("Ann"), person("Bo")));
    public Instant asOf = MONDAY.plus(Duration.ofHours(6));
    public CrewHours hours = new CrewHours(
            LocalTime.of(7, 0),
            LocalTime.of(18, 0),
            Duration.ZERO,
            EnumSet.allOf(DayOfWeek.class),
            false);
    public PlanProblem.Prices prices = new PlanProblem.Prices(0, 0, 0);
    public Optional<Plan> lastOrder = Optional.empty();
    public Map<String, Double> stockHa = Map.of();
    public Map<String, GeoPoint> standing = Map.of();
    public Map<String, String> inBoxes = Map.of();

    public static Person person(String name, String... machines) {
        return new Person(name, Set.of(machines), List.of());
    }

    public static Machine machine(String name, Operation... operations) {
        return new Machine(
                name,
                Set.of(operations),
                new Machine.WorkPace(2, 5, 1, 0),
                new Machine.Travel(30, Duration.ofMinutes(10), YARD),
                Optional.empty(),
                Machine.MassClass.LIGHT,
                MIX_CHANGE);
    }

    public static Stage stage(String name, Operation operation, int leastH, int greatestH) {
        return new Stage(
                name,
                operation,
                Duration.ofHours(leastH),
                greatestH < 0 ? Optional.empty() : Optional.of(Duration.ofHours(greatestH)),
                operation == Operation.SEED
                        ? StageLimits.seedingBy(SeedingMethod.ROLLED)
                        : StageLimits.SOIL_ONLY);
    }

    public static final Recipe TILL_SEED = new Recipe(
            "till and seed",
            List.of(stage("till", Operation.TILL, 0, -1), stage("seed", Operation.SEED, 0, 48)));

    public static final Recipe SEED_ONLY =
            new Recipe("seed", List.of(stage("seed", Operation.SEED, 0, -1)));

    /** Worth 1 at the start of the horizon, a thousandth less each hour. */
    public static double slowlyFalling(int hour) {
        return 1 - 0.001 * hour;
    }

    /** A field under construction. */
    public static final class Plot {
        public String name = "F1";
        public double areaHa = 2;
        public double kmNorth = 5;
        public double priority = 1;
        public Recipe recipe = TILL_SEED;
        public String mix = "brassica";
        public FieldStatus status = FieldStatus.UNTOUCHED;
        public IntToDoubleFunction worth = SmallFarm::slowlyFalling;
        public final Map<Operation, BitSet> stopped = new EnumMap<>(Operation.class);
        public BitSet firmed = new BitSet();
        public Job.Kept kept = Job.Kept.NOTHING;
        public Fillings fillings = Fillings.NONE;

        public Plot stop(Operation operation, int fromHour, int toHour) {
            stopped.computeIfAbsent(operation, o -> new BitSet()).set(fromHour, toHour);
            return this;
        }

        public Job job() {
            GeoPoint place = new GeoPoint(YARD.latitudeDeg() + kmNorth / 111.2, -85.0);
            Field field = new Field(
                    name,
                    "property " + kmNorth,
                    place,
                    areaHa,
                    new Field.Ground(new SoilTexture(0.4, 0.2, 2.5), 0.02),
                    new Field.Wish(List.of(mix), recipe.name(), priority));
            double[] worths = IntStream.range(0, HOURS).mapToDouble(worth).toArray();
            return new Job(
                    new FieldCase(field, status),
                    recipe,
                    place,
                    List.of(new Job.MixOption(mix, worths, worths)),
                    stopped,
                    firmed,
                    kept,
                    fillings);
        }
    }

    public static Plot plot(String name, double areaHa) {
        Plot plot = new Plot();
        plot.name = name;
        plot.areaHa = areaHa;
        return plot;
    }

    public SmallFarm with(Plot... plots) {
        Arrays.stream(plots).map(Plot::job).forEach(jobs::add);
        return this;
    }

    public PlanProblem problem() {
        return new PlanProblem(
                asOf,
                new Window(MONDAY, MONDAY.plus(Duration.ofHours(HOURS))),
                new Crew(new DayClock(ZONE, UnitSystem.METRIC), hours, people, machines, 1.3),
                jobs,
                prices,
                lastOrder,
                stockHa,
                standing,
                inBoxes);
    }

    /** An instant as hours from Monday 00:00. */
    public static double hour(Instant instant) {
        return Duration.between(MONDAY, instant).toSeconds() / 3600.0;
    }
}
