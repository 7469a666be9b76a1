package rainward.readiness;

import java.time.Instant;
import java.time.MonthDay;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import rainward.farm.Mix;
import rainward.farm.Season;
import rainward.farm.Species;
import rainward.readiness.Figures.Factor;
import rainward.readiness.Figures.Sensitivity;
import rainward.soil.SoilRun;
import rainward.stand.SeedingHours;
import rainward.stand.StandCase;
import rainward.stand.model.StandModel;
import rainward.weather.trace.Traces;

/**
 * Which of rain, moisture, heat and season would change the answer most: each made perfect once.
 */
public final class Sensitivities {
    private static final int HOURS_TO_RAIN = 24;
    private static final int HOURS_MOIST = 72;

    /** So many traces tell the order of the factors; evenly taken from all. */
    private static final int TRACES = 40;

    private final StandModel model;

    public Sensitivities(StandModel model) {
        this.model = model;
    }

    /**
     * The four factors, the one that would bring most first.
     *
     * @param question as things stand
     * @param seeding the hour of seeding to look at, inside the question's hours
     */
    public List<Sensitivity> of(StandCase question, Instant seeding) {
        SeedingHours hour = new SeedingHours(seeding, 1, question.hours().zone());
        int[] kept = kept(question.traces().count());
        StandCase now = new StandCase(
                question.mix(),
                question.conditions(),
                thinned(question.soil(), kept),
                thinned(question.traces(), kept),
                hour,
                question.later().map(later -> thinned(later, kept)));
        double worth = worth(now);
        return Arrays.stream(Factor.values())
                .map(factor -> new Sensitivity(factor, worth, worth(perfect(now, factor))))
                .sorted(Comparator.comparingDouble(s -> -s.gain()))
                .toList();
    }

    private double worth(StandCase question) {
        return model.outlook(question).worth()[0];
    }

    private static StandCase perfect(StandCase now, Factor factor) {
        int seeded = now.traces().hourOf(now.hours().start());
        SoilRun soil = now.soil();
        return switch (factor) {
            case RAIN ->
                with(
                        now,
                        moist(soil, seeded + HOURS_TO_RAIN, soil.hours()),
                        later -> moist(later, 0, later.hours()),
                        Sensitivities::gentle);
            case MOISTURE ->
                with(now, moist(soil, seeded, seeded + HOURS_MOIST), later -> later, t -> t);
            case HEAT -> with(now, warm(soil, now.mix()), later -> warm(later, now.mix()), t -> t);
            case SEASON ->
                new StandCase(
                        timeless(now.mix()),
                        now.conditions(),
                        soil,
                        now.traces(),
                        now.hours(),
                        now.later());
        };
    }

    private static StandCase with(
            StandCase now,
            SoilRun soil,
            UnaryOperator<SoilRun> soilLater,
            UnaryOperator<Traces> weather) {
        return new StandCase(
                now.mix(),
                now.conditions(),
                soil,
                weather.apply(now.traces()),
                now.hours(),
                now.later()
                        .map(later -> new StandCase.Later(
                                soilLater.apply(later.soil()),
                                weather.apply(later.traces()),
                                later.courseOf())));
    }

    private static SoilRun moist(SoilRun soil, int from, int to) {
        SoilRun.SeedZone zone = soil.seedZone();
        return new SoilRun(
                soil.start(),
                new SoilRun.SeedZone(
                        zone.depthCm(),
                        changed(
                                zone.potentialMpa(),
                                from,
                                to,
                                mpa -> Math.max(mpa, PartScores.MOIST_MPA)),
                        zone.waterFraction(),
                        zone.tempC(),
                        zone.surfaceTempC()),
                new SoilRun.SoilSurface(
                        changed(soil.surface().dryFrontCm(), from, to, cm -> 0.0),
                        soil.surface().runoffMm(),
                        soil.surface().workable()));
    }

    private static SoilRun warm(SoilRun soil, Mix mix) {
        SoilRun.SeedZone zone = soil.seedZone();
        Species.Cardinal cardinal = mix.components().get(0).species().cardinal();
        return new SoilRun(
                soil.start(),
                new SoilRun.SeedZone(
                        zone.depthCm(),
                        zone.potentialMpa(),
                        zone.waterFraction(),
                        changed(zone.tempC(), 0, soil.hours(), t -> cardinal.optimumTempC()),
                        changed(
                                zone.surfaceTempC(),
                                0,
                                soil.hours(),
                                t -> Math.min(t, cardinal.ceilingTempC()))),
                soil.surface());
    }

    private static Traces gentle(Traces traces) {
        double[][] still = changed(traces.peak30MmPerH(), 0, traces.hours(), mmPerH -> 0.0);
        return new Traces(traces.air(), traces.sun(), traces.rainMm(), still);
    }

    private static double[][] changed(
            double[][] rows, int from, int to, DoubleUnaryOperator change) {
        double[][] copy = rows.clone();
        for (int h = from; h < Math.min(to, rows.length); h++) {
            double[] row = rows[h].clone();
            for (int i = 0; i < row.length; i++) {
                row[i] = change.applyAsDouble(row[i]);
            }
            copy[h] = row;
        }
        return copy;
    }

    private static int[] kept(int traces) {
        int count = Math.min(TRACES, traces);
        return IntStream.range(0, count).map(i -> i * traces / count).toArray();
    }

    private static StandCase.Later thinned(StandCase.Later later, int[] kept) {
        int[] courseOf = IntStream.of(kept).map(i -> later.courseOf()[i]).toArray();
        return new StandCase.Later(later.soil(), later.traces(), courseOf);
    }

    private static SoilRun thinned(SoilRun soil, int[] kept) {
        SoilRun.SeedZone zone = soil.seedZone();
        return new SoilRun(
                soil.start(),
                new SoilRun.SeedZone(
                        zone.depthCm(),
                        thinned(zone.potentialMpa(), kept),
                        thinned(zone.waterFraction(), kept),
                        thinned(zone.tempC(), kept),
                        thinned(zone.surfaceTempC(), kept)),
                new SoilRun.SoilSurface(
                        thinned(soil.surface().dryFrontCm(), kept),
                        thinned(soil.surface().runoffMm(), kept),
                        soil.surface().workable()));
    }

    private static Traces thinned(Traces traces, int[] kept) {
        return new Traces(
                traces.air(),
                traces.sun(),
                thinned(traces.rainMm(), kept),
                thinned(traces.peak30MmPerH(), kept));
    }

    private static double[][] thinned(double[][] rows, int[] kept) {
        double[][] fewer = new double[rows.length][kept.length];
        for (int h = 0; h < rows.length; h++) {
            for (int i = 0; i < kept.length; i++) {
                fewer[h][i] = rows[h][kept[i]];
            }
        }
        return fewer;
    }

    private static Mix timeless(Mix mix) {
        Season always = new Season(
                MonthDay.of(1, 1),
                MonthDay.of(12, 31),
                MonthDay.of(12, 31),
                MonthDay.of(12, 31),
                mix.season().fullWorth(),
                1);
        return new Mix(
                mix.name(),
                mix.components(),
                mix.sowingDepthCm(),
                mix.standTargetFraction(),
                always);
    }
}
