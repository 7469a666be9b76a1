package rainward.readiness;

import java.time.Duration;
import java.util.List;
import java.util.stream.IntStream;
import rainward.farm.Species;
import rainward.soil.SoilRun;
import rainward.stand.ThermalResponse;

/** Rain, moisture and heat as people ask for them, and the seedbed in numbers. */
final class PartScores {
    /** Moist enough that water does not hold seed up [MPa]. */
    static final double MOIST_MPA = -0.05;

    /** Warmth at half of the species' best rate or more is not counted as a lack. */
    private static final double ENOUGH_WARMTH = 0.5;

    private static final int DAYS_LOOKED_AT = 2;
    private static final int STEP_HOURS = 3;

    private PartScores() {}

    /**
     * All three.
     *
     * @param prospect the field's next possible hour
     * @param rain ahead of it
     * @param ahead soil and weather
     * @param hour the next possible hour in the traces
     */
    static Readiness.Parts of(
            Prospect prospect, Figures.Rain rain, ReadinessCase.Ahead ahead, int hour) {
        Species main = prospect.mix().components().get(0).species();
        return new Readiness.Parts(
                percent(rain.chance() * (1 - prospect.losses().washOutFraction())),
                percent(moisture(ahead.soil(), hour, main)),
                percent(warmth(ahead.soil(), hour, main)
                        * (1 - prospect.losses().heatFraction())));
    }

    /**
     * How fast seed would start in the water at its depth, against moist soil: hydrotime's rate.
     */
    private static double moisture(SoilRun soil, int hour, Species species) {
        double base = species.psiBase50Mpa();
        double sum = 0;
        for (double potential : soil.seedZone().potentialMpa()[hour]) {
            sum += Math.max(0, Math.min(1, (potential - base) / (MOIST_MPA - base)));
        }
        return sum / soil.traces();
    }

    /** Warmth over two days at seed depth, against half of the best rate. */
    private static double warmth(SoilRun soil, int hour, Species species) {
        ThermalResponse response = new ThermalResponse(species.cardinal());
        int end = Math.min(soil.hours(), hour + 24 * DAYS_LOOKED_AT);
        double sum = 0;
        for (int h = hour; h < end; h++) {
            for (double tempC : soil.seedZone().tempC()[h]) {
                sum += response.rateFraction(tempC);
            }
        }
        return Math.min(1, sum / ((end - hour) * soil.traces() * ENOUGH_WARMTH));
    }

    /**
     * The seedbed in numbers.
     *
     * @param soil on the traces, at the depth of the mix
     * @param hour the next possible hour in the traces
     */
    static Figures.Seedbed seedbed(SoilRun soil, int hour) {
        SoilRun.SeedZone zone = soil.seedZone();
        int traces = soil.traces();
        double[] hottestC = zone.surfaceTempC()[hour].clone();
        double sumC = 0;
        int end = Math.min(soil.hours(), hour + 24 * DAYS_LOOKED_AT);
        for (int h = hour; h < end; h++) {
            for (int t = 0; t < traces; t++) {
                sumC += zone.tempC()[h][t];
                hottestC[t] = Math.max(hottestC[t], zone.surfaceTempC()[h][t]);
            }
        }
        return new Figures.Seedbed(
                zone.depthCm(),
                Figures.Range.of(zone.waterFraction()[hour], traces),
                sumC / ((end - hour) * (double) traces),
                Figures.Range.of(hottestC, traces).middle(),
                course(soil));
    }

    private static Figures.Course course(SoilRun soil) {
        List<Figures.Range> ranges = IntStream.iterate(
                        0, h -> h < soil.hours(), h -> h + STEP_HOURS)
                .mapToObj(h -> Figures.Range.of(soil.seedZone().waterFraction()[h], soil.traces()))
                .toList();
        return new Figures.Course(soil.start(), Duration.ofHours(STEP_HOURS), ranges);
    }

    private static int percent(double fraction) {
        return (int) Math.round(100 * Math.max(0, Math.min(1, fraction)));
    }
}
