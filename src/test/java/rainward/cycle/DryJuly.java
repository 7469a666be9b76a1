package rainward.cycle;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import rainward.farm.Crew;
import rainward.farm.CrewHours;
import rainward.farm.DayClock;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.FieldStatus;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.Mix;
import rainward.farm.Operation;
import rainward.farm.Person;
import rainward.farm.Property;
import rainward.farm.Recipe;
import rainward.farm.Roster;
import rainward.farm.SeedingMethod;
import rainward.farm.SoilTexture;
import rainward.farm.Stage;
import rainward.farm.StageLimits;
import rainward.farm.UnitSystem;
import rainward.farm.Window;
import rainward.intake.ClimateTable;
import rainward.intake.Shipped;
import rainward.intake.TableFolder;
import rainward.queue.problem.PlanProblem;
import rainward.weather.climate.Climate;
import rainward.weather.climate.DailyWeather;
import rainward.weather.climate.TempRange;
import rainward.weather.past.PastWeather;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainChance;
import rainward.weather.sky.HourlyAir;
import rainward.weather.source.ForecastSeries;
import rainward.window.WindowRules;

/**
 * An invented crew in southern Michigan on a Monday after three dry weeks, a storm due on Wednesday
 * before dawn: the ordinary case that the program is for.
 */
final class DryJuly {

    static final ZoneId ZONE = ZoneId.of("America/Detroit");
    static final Instant MONDAY_FIVE = Instant.parse("2026-07-13T09:00:00Z");
    static final GeoPoint YARD = new GeoPoint(42.152, -84.512);
    static final Property MILL = new Property("Mill Pond", new GeoPoint(42.071, -84.655));
    static final Property CREEK = new Property("Otter Creek", new GeoPoint(42.203, -84.902));
    static final Climate CLIMATE =
            new ClimateTable(TableFolder.onClassPath()).of("southern michigan");
    static final SoilTexture LOAM = new SoilTexture(0.40, 0.20, 2.5);
    static final Mix BRASSICA = Shipped.mix("turnip and rape");
    static final Recipe WORKED = new Recipe(
            "worked ground",
            List.of(
                    stage("till", Operation.TILL, StageLimits.SOIL_ONLY),
                    stage("seed", Operation.SEED, StageLimits.seedingBy(SeedingMethod.ROLLED))));

    static final int STORM_AFTER_HOURS = 62;

    private static final int DAYS_BEFORE = 40;

    private DryJuly() {}

    private static Stage stage(String name, Operation operation, StageLimits limits) {
        return new Stage(name, operation, Duration.ZERO, Optional.empty(), limits);
    }

    static Field field(String name, Property property, double areaHa) {
        return new Field(
                name,
                property.name(),
                property.place(),
                areaHa,
                new Field.Ground(LOAM, 0.03),
                new Field.Wish(List.of(BRASSICA.name()), WORKED.name(), 1));
    }

    static FieldCase untouched(String name, Property property, double areaHa) {
        return new FieldCase(field(name, property, areaHa), FieldStatus.UNTOUCHED);
    }

    static Roster roster() {
        return Roster.of(List.of(MILL, CREEK), List.of(BRASSICA), List.of(WORKED), crew());
    }

    private static Crew crew() {
        CrewHours hours = new CrewHours(
                LocalTime.of(7, 0),
                LocalTime.of(19, 0),
                Duration.ofHours(1),
                EnumSet.complementOf(EnumSet.of(DayOfWeek.SUNDAY)),
                true);
        return new Crew(
                new DayClock(ZONE, UnitSystem.METRIC),
                hours,
                List.of(
                        new Person("Dell", Set.of(), List.of()),
                        new Person("Marnie", Set.of(), List.of())),
                List.of(machine("tiller", Operation.TILL), machine("seeder", Operation.SEED)),
                1.3);
    }

    private static Machine machine(String name, Operation operation) {
        return new Machine(
                name,
                Set.of(operation),
                new Machine.WorkPace(3, 7, 0.7, 0.3),
                new Machine.Travel(25, Duration.ofMinutes(15), YARD),
                Optional.empty(),
                Machine.MassClass.MEDIUM,
                Machine.USUAL_MIX_CHANGE);
    }

    static CycleInput.Rules rules() {
        return new CycleInput.Rules(
                new CycleInput.Draw(CLIMATE, 100, 7),
                0.6,
                new PlanProblem.Prices(0.1, 0.2, 0.0025),
                WindowRules.usual(ZONE),
                UnitSystem.US_CUSTOMARY);
    }

    static CycleInput input(List<FieldCase> fields, Map<String, CycleInput.PropertyWeather> sky) {
        return new CycleInput(MONDAY_FIVE, roster(), fields, sky, rules(), CycleInput.Memory.NONE);
    }

    /** Both properties alike: dry so far, the storm ahead. */
    static Map<String, CycleInput.PropertyWeather> stormAhead() {
        Map<String, CycleInput.PropertyWeather> weather = new TreeMap<>();
        for (Property property : List.of(MILL, CREEK)) {
            weather.put(property.name(), weather(property, 0));
        }
        return weather;
    }

    /** One property, with so much rain on the day before. */
    static CycleInput.PropertyWeather weather(Property property, double yesterdayMm) {
        return new CycleInput.PropertyWeather(
                Optional.of(storm(property.place())), past(property.place(), yesterdayMm));
    }

    static PastWeather past(GeoPoint place, double yesterdayMm) {
        return past(place, Map.of(1, yesterdayMm));
    }

    /** Dry for three weeks but for the rain of some days, told by how long ago they are. */
    static PastWeather past(GeoPoint place, Map<Integer, Double> lateMm) {
        LocalDate monday = LocalDate.ofInstant(MONDAY_FIVE, ZONE);
        List<DailyWeather> days = IntStream.rangeClosed(1, DAYS_BEFORE)
                .mapToObj(ago -> new DailyWeather(
                        monday.minusDays(ago),
                        Optional.of(new TempRange(17, 31)),
                        OptionalDouble.of(
                                lateMm.getOrDefault(ago, ago > 21 && ago % 5 == 0 ? 9.0 : 0.0)),
                        DailyWeather.Sky.UNKNOWN))
                .toList();
        return PastWeather.of(
                new PastWeather.Known(List.of(), days, List.of(), List.of()),
                new PastWeather.Frame(
                        new Window(
                                monday.minusDays(DAYS_BEFORE).atStartOfDay(ZONE).toInstant(),
                                MONDAY_FIVE),
                        ZONE,
                        place,
                        CLIMATE,
                        3));
    }

    /**
     * Dry and hot, showery and cooler after 24 mm at 95 % between Wednesday 19:00 and Thursday
     * 1:00.
     */
    static ForecastSeries storm(GeoPoint place) {
        int hours = 168;
        double[] airTempC = new double[hours];
        double[] dewPointC = new double[hours];
        double[] windMps = new double[hours];
        double[] sky = new double[hours];
        for (int h = 0; h < hours; h++) {
            boolean cool = h > STORM_AFTER_HOURS;
            airTempC[h] =
                    (cool ? 20 : 25) + (cool ? 4 : 7) * Math.cos((h - 11) / 24.0 * 2 * Math.PI);
            dewPointC[h] = 15;
            windMps[h] = 2.5;
            sky[h] = cool ? 0.7 : 0.2;
        }
        Instant stormStart = MONDAY_FIVE.plus(Duration.ofHours(STORM_AFTER_HOURS));
        Window night = new Window(stormStart, stormStart.plus(Duration.ofHours(6)));
        Window before = new Window(MONDAY_FIVE, stormStart);
        Window after = new Window(night.to(), MONDAY_FIVE.plus(Duration.ofHours(hours)));
        return new ForecastSeries(
                new ForecastSeries.Stamp("nws", MONDAY_FIVE.minusSeconds(4800), MONDAY_FIVE),
                place,
                new HourlyAir(MONDAY_FIVE, airTempC, dewPointC, windMps, sky),
                new ForecastSeries.RainOutlook(
                        List.of(
                                new RainAmount(before, 0),
                                new RainAmount(night, 24),
                                new RainAmount(after, 14)),
                        List.of(
                                new RainChance(before, 0),
                                new RainChance(night, 0.95),
                                new RainChance(after, 0.3))),
                List.of());
    }
}
