package rainward.queue.sample;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import rainward.farm.GeoPoint;
import rainward.farm.Window;
import rainward.queue.problem.Job;
import rainward.queue.problem.PlanProblem;

/** Days in mid-July, invented: fields on scattered properties, a crew, eight days of weather. */
public final class GeneratedDays {

    /** Eight days are planned. */
    public static final int HORIZON_HOURS = 8 * 24;

    private static final Instant FIRST_HOUR = Instant.parse("2026-07-13T04:00:00Z");
    private static final Instant AS_OF = Instant.parse("2026-07-13T10:00:00Z");
    private static final GeoPoint MIDDLE = new GeoPoint(42.0, -85.0);
    private static final int PROPERTIES_A_CREW = 6;
    private static final double NEAR_KM = 12;
    private static final double SCATTERED_KM = 30;
    private static final double KM_PER_DEGREE = 111.2;

    private GeneratedDays() {}

    /** Kinds of days. */
    public enum Kind {
        ONE_STORM,
        TWO_STORMS,
        DRIZZLE,
        DRY,
        WET_SPELL,
        SCATTERED_FARMS,
        ONE_CREW_SHORT,
        CAPACITY_TO_SPARE
    }

    /** How many days of 36 fields the benchmark asks for. */
    public static final int BENCH_DAYS = 30;

    /** Day {@code index} of the benchmark: kinds in turn, the index is the seed. */
    public static PlanProblem benchDay(int index) {
        Kind[] kinds = Kind.values();
        return day(kinds[index % kinds.length], index, 36, 1);
    }

    /**
     * Generates a day.
     *
     * @param kind of weather and crew
     * @param seed of the random numbers
     * @param fields how many
     * @param crews each with a spreader, two tillage tractors, a seeder and four people
     * @return the problem, with no order given out before
     */
    public static PlanProblem day(Kind kind, long seed, int fields, int crews) {
        return day(kind, seed, new Size(fields, crews), UnaryOperator.identity());
    }

    /** How large a problem is. */
    record Size(int fields, int crews) {}

    /** The same day under a forecast that differs from what will come. */
    static PlanProblem day(Kind kind, long seed, Size size, UnaryOperator<SampleWeather> forecast) {
        int fields = size.fields;
        int crews = size.crews;
        SplittableRandom random = new SplittableRandom(31 * seed + kind.ordinal());
        List<GeoPoint> places = places(kind, crews, random);
        SampleWeather weather = forecast.apply(SampleWeather.of(kind, random));
        List<Job> jobs = new ArrayList<>();
        for (int i = 0; i < fields; i++) {
            int property = (int) ((long) i * places.size() / fields);
            jobs.add(SampleFields.job(i, property, places.get(property), weather, random));
        }
        return new PlanProblem(
                AS_OF,
                new Window(FIRST_HOUR, FIRST_HOUR.plusSeconds(3600L * HORIZON_HOURS)),
                SampleCrew.of(kind, crews, places),
                jobs,
                new PlanProblem.Prices(0.02, 0.03, 0.0025),
                Optional.empty());
    }

    private static List<GeoPoint> places(Kind kind, int crews, SplittableRandom random) {
        double spreadKm = kind == Kind.SCATTERED_FARMS ? SCATTERED_KM : NEAR_KM;
        double side = Math.ceil(Math.sqrt(crews));
        List<GeoPoint> places = new ArrayList<>();
        for (int c = 0; c < crews; c++) {
            double northKm = 2.2 * spreadKm * (c % side);
            double eastKm = 2.2 * spreadKm * Math.floor(c / side);
            for (int p = 0; p < PROPERTIES_A_CREW; p++) {
                places.add(offset(
                        northKm + random.nextDouble(-spreadKm, spreadKm),
                        eastKm + random.nextDouble(-spreadKm, spreadKm)));
            }
        }
        return places;
    }

    private static GeoPoint offset(double northKm, double eastKm) {
        double perDegreeEast = KM_PER_DEGREE * Math.cos(Math.toRadians(MIDDLE.latitudeDeg()));
        return new GeoPoint(
                MIDDLE.latitudeDeg() + northKm / KM_PER_DEGREE,
                MIDDLE.longitudeDeg() + eastKm / perDegreeEast);
    }
}
