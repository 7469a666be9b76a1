package rainward.stand;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import rainward.farm.Mix;
import rainward.farm.MixComponent;
import rainward.farm.Season;
import rainward.farm.SeedingMethod;
import rainward.farm.SoilTexture;
import rainward.farm.Species;
import rainward.intake.Shipped;
import rainward.soil.SoilRun;
import rainward.stand.model.StandModel;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;
import rainward.weather.trace.Traces;

/** Ground and weather made up hour by hour, for a stand to be reckoned in. */
public final class Seedbeds {
    public static final ZoneId DETROIT = ZoneId.of("America/Detroit");
    public static final Instant JULY_15 = Instant.parse("2026-07-15T04:00:00Z");
    public static final SoilTexture SILT_LOAM = new SoilTexture(0.2, 0.15, 2.5);
    public static final SeedingConditions FIRM_AND_FLAT = rolled(0.0);

    /** Wet enough that water does not hold seed up; field capacity is at -0.033 MPa. */
    public static final double FIELD_CAPACITY_MPA = -0.033;

    public static final double WILTING_POINT_MPA = -1.5;

    private final int hours;
    private final int traces;
    private final double[][] potentialMpa;
    private final double[][] tempC;
    private final double[][] surfaceTempC;
    private final double[][] dryFrontCm;
    private final double[][] rainMm;
    private final double[][] peak30MmPerH;
    private Optional<Seedbeds> later = Optional.empty();
    private double depthCm = 1.3;
    private Instant start = JULY_15;

    public Seedbeds(int hours, int traces) {
        this.hours = hours;
        this.traces = traces;
        potentialMpa = filled(FIELD_CAPACITY_MPA);
        tempC = filled(25);
        surfaceTempC = filled(30);
        dryFrontCm = filled(0);
        rainMm = filled(0);
        peak30MmPerH = filled(0);
    }

    /** One trace, moist at one temperature throughout. */
    public static Seedbeds steady(int hours, double potentialMpa, double tempC) {
        return new Seedbeds(hours, 1).potential(0, hours, potentialMpa).temp(tempC);
    }

    public static SeedingConditions rolled(double slopeFraction) {
        return new SeedingConditions(SeedingMethod.ROLLED, SILT_LOAM, slopeFraction, true, 0);
    }

    private double[][] filled(double value) {
        double[][] rows = new double[hours][traces];
        for (double[] row : rows) {
            Arrays.fill(row, value);
        }
        return rows;
    }

    public Seedbeds potential(int from, int to, double value) {
        fill(potentialMpa, from, to, value);
        return this;
    }

    public Seedbeds temp(double value) {
        fill(tempC, 0, hours, value);
        return this;
    }

    public Seedbeds surfaceTemp(int from, int to, double value) {
        fill(surfaceTempC, from, to, value);
        return this;
    }

    public Seedbeds dryFront(int from, int to, double value) {
        fill(dryFrontCm, from, to, value);
        return this;
    }

    public Seedbeds rain(int hour, double mm, double peak30) {
        fill(rainMm, hour, hour + 1, mm);
        fill(peak30MmPerH, hour, hour + 1, peak30);
        return this;
    }

    public Seedbeds depth(double value) {
        depthCm = value;
        return this;
    }

    public Seedbeds starting(Instant instant) {
        start = instant;
        return this;
    }

    /** Goes on with other ground and weather where this ends, each trace with one of them. */
    public Seedbeds followedBy(Seedbeds next) {
        later = Optional.of(next.starting(start.plus(Duration.ofHours(hours))));
        return this;
    }

    /** Dry from one hour to another: wilting point at the seed and the front going down. */
    public Seedbeds drought(int from, int to, double frontCm) {
        return potential(from, to, -3).dryFront(from, to, frontCm);
    }

    private static void fill(double[][] rows, int from, int to, double value) {
        for (int h = from; h < Math.min(to, rows.length); h++) {
            Arrays.fill(rows[h], value);
        }
    }

    public double[][] potentials() {
        return potentialMpa;
    }

    public double[][] fronts() {
        return dryFrontCm;
    }

    public double[][] rains() {
        return rainMm;
    }

    public double[][] peaks() {
        return peak30MmPerH;
    }

    public double[][] surfaceTemps() {
        return surfaceTempC;
    }

    public double[][] temps() {
        return tempC;
    }

    public StandCase sown(Mix mix, SeedingConditions conditions, int seedingHours) {
        return new StandCase(
                mix,
                conditions,
                run(),
                traces(),
                new SeedingHours(start, seedingHours, DETROIT),
                later.map(next -> new StandCase.Later(
                        next.run(),
                        next.traces(),
                        IntStream.range(0, traces).map(i -> i % next.traces).toArray())));
    }

    private SoilRun run() {
        return new SoilRun(
                start,
                new SoilRun.SeedZone(depthCm, potentialMpa, filled(0.2), tempC, surfaceTempC),
                new SoilRun.SoilSurface(dryFrontCm, filled(0), new boolean[hours][traces]));
    }

    /** What comes of it with the usual rules. */
    public StandOutlook outlook(Mix mix, int seedingHours) {
        return StandModel.usual().outlook(sown(mix, FIRM_AND_FLAT, seedingHours));
    }

    private Traces traces() {
        double[] none = new double[hours];
        return new Traces(
                new HourlyAir(start, none, none, none, none),
                new EvaporationDemand(none, none),
                rainMm,
                peak30MmPerH);
    }

    /** A mix of one species that is always in season. */
    public static Mix alone(String species) {
        Species seed = Shipped.species(species);
        return new Mix(
                species + " alone",
                java.util.List.of(new MixComponent(seed, 5, 8)),
                1.3,
                0.35,
                ALWAYS);
    }

    public static final Season ALWAYS = new Season(
            java.time.MonthDay.of(1, 1),
            java.time.MonthDay.of(12, 31),
            java.time.MonthDay.of(12, 30),
            java.time.MonthDay.of(12, 31),
            1,
            1);
}
