package rainward.readiness;

import rainward.farm.Species;
import rainward.soil.SoilRun;
import rainward.stand.ThermalResponse;

/** Rain, moisture and heat as people ask for them, each 0 to 100. */
final class PartScores {
    /** Moist enough that water does not hold seed up [MPa]. */
    private static final double MOIST_MPA = -0.05;

    /** Warmth at half of the species' best rate or more is not counted as a lack. */
    private static final double ENOUGH_WARMTH = 0.5;

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
            Prospect prospect, RainAhead rain, ReadinessCase.Ahead ahead, int hour) {
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
        int end = Math.min(soil.hours(), hour + 48);
        double sum = 0;
        for (int h = hour; h < end; h++) {
            for (double tempC : soil.seedZone().tempC()[h]) {
                sum += response.rateFraction(tempC);
            }
        }
        return Math.min(1, sum / ((end - hour) * soil.traces() * ENOUGH_WARMTH));
    }

    private static int percent(double fraction) {
        return (int) Math.round(100 * Math.max(0, Math.min(1, fraction)));
    }
}
