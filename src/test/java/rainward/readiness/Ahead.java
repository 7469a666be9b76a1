package rainward.readiness;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rainward.farm.CrewHours;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.FieldStatus;
import rainward.farm.GeoPoint;
import rainward.farm.Mix;
import rainward.farm.SeedingMethod;
import rainward.farm.SoilTexture;
import rainward.farm.UnitSystem;
import rainward.intake.Shipped;
import rainward.soil.SoilRun;
import rainward.stand.SeedingConditions;
import rainward.stand.SeedingHours;
import rainward.stand.StandCase;
import rainward.stand.model.StandModel;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;
import rainward.weather.source.ForecastSeries;
import rainward.weather.trace.Traces;

/** A field in July with ten days made up ahead of it: ten traces, dry unless told otherwise. */
final class Ahead {
    static final ZoneId DETROIT = ZoneId.of("America/Detroit");

    /** Tuesday afternoon, 17:00 in Michigan. */
    static final Instant TUESDAY = Instant.parse("2026-07-14T21:00:00Z");

    /** A long day, every day of the week. */
    static final CrewHours SIX_TO_EIGHT = new CrewHours(
            LocalTime.of(6, 0),
            LocalTime.of(20, 0),
            Duration.ZERO,
            EnumSet.allOf(DayOfWeek.class),
            false);

    static final int HOURS = 240;
    static final int TRACES = 10;

    final double[][] potentialMpa = filled(-3);
    final double[][] tempC = filled(26);
    final double[][] surfaceTempC = filled(30);
    final double[][] dryFrontCm = filled(2.54);
    final double[][] rainMm = filled(0);
    final double[][] peak30MmPerH = filled(0);
    final boolean[][] workable = new boolean[HOURS][TRACES];
    FieldStatus status = FieldStatus.UNTOUCHED;
    ReadinessCase.Work work = new ReadinessCase.Work(List.of(), TUESDAY, SIX_TO_EIGHT);
    Instant issuedAt = TUESDAY.minusSeconds(3600);
    Set<String> outOfStock = Set.of();
    List<Mix> mixes = List.of(Shipped.mix("three brassicas"));
    UnitSystem units = UnitSystem.US_CUSTOMARY;

    Ahead() {
        for (boolean[] row : workable) {
            Arrays.fill(row, true);
        }
    }

    private static double[][] filled(double value) {
        double[][] rows = new double[HOURS][TRACES];
        for (double[] row : rows) {
            Arrays.fill(row, value);
        }
        return rows;
    }

    /** A rain on the first so many traces that leaves the seedbed moist to the end. */
    Ahead rain(int hour, int onTraces, double mm, double peak30) {
        for (int trace = 0; trace < onTraces; trace++) {
            rainMm[hour][trace] = mm;
            peak30MmPerH[hour][trace] = peak30;
            for (int h = hour; h < HOURS; h++) {
                potentialMpa[h][trace] = -0.04;
                dryFrontCm[h][trace] = 0;
            }
        }
        return this;
    }

    Ahead moist() {
        return rain(0, TRACES, 0.1, 0.1);
    }

    Ahead wetFor(int hours) {
        for (int h = 0; h < hours; h++) {
            Arrays.fill(workable[h], false);
        }
        return this;
    }

    Readiness readiness() {
        return ReadinessModel.usual().of(question());
    }

    ReadinessCase question() {
        return new ReadinessCase(
                new FieldCase(field(), status),
                work,
                Optional.of(new ReadinessCase.Ahead(
                        new ForecastSeries.Stamp("nws", issuedAt, issuedAt),
                        traces(),
                        soil(),
                        mixes.stream().map(this::option).toList())),
                outOfStock,
                new ReadinessCase.Teller(TUESDAY, DETROIT, units));
    }

    StandCase stand(Mix mix) {
        return new StandCase(
                mix,
                new SeedingConditions(
                        SeedingMethod.ROLLED, field().ground().texture(), 0.06, true, 0),
                soil(),
                traces(),
                new SeedingHours(TUESDAY, 168, DETROIT));
    }

    /** The same ground and weather, later in the year. */
    static StandCase movedBy(StandCase question, Duration later) {
        Instant start = TUESDAY.plus(later);
        double[] none = new double[HOURS];
        return new StandCase(
                question.mix(),
                question.conditions(),
                new SoilRun(start, question.soil().seedZone(), question.soil().surface()),
                new Traces(
                        new HourlyAir(start, none, none, none, none),
                        question.traces().sun(),
                        question.traces().rainMm(),
                        question.traces().peak30MmPerH()),
                new SeedingHours(start, question.hours().count(), DETROIT));
    }

    private ReadinessCase.Option option(Mix mix) {
        return new ReadinessCase.Option(stand(mix), StandModel.usual().outlook(stand(mix)));
    }

    private SoilRun soil() {
        return new SoilRun(
                TUESDAY,
                new SoilRun.SeedZone(1.3, potentialMpa, filled(0.1), tempC, surfaceTempC),
                new SoilRun.SoilSurface(dryFrontCm, filled(0), workable));
    }

    private Traces traces() {
        double[] none = new double[HOURS];
        return new Traces(
                new HourlyAir(TUESDAY, none, none, none, none),
                new EvaporationDemand(none, none),
                rainMm,
                peak30MmPerH);
    }

    static Field field() {
        return new Field(
                "Creek bottom",
                "Hollow farm",
                new GeoPoint(42.1, -84.9),
                1.2,
                new Field.Ground(new SoilTexture(0.3, 0.15, 2.5), 0.06),
                new Field.Wish(List.of("three brassicas"), "till and seed", 1));
    }
}
