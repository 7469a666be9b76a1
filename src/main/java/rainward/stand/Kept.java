package rainward.stand;

import java.util.Arrays;
import rainward.farm.Species;

/**
 * Running sums and products along one trace for one kind of seed: growth so far, and the shares of
 * seed that rain and heat have left. Entry {@code h} holds up to the start of hour {@code h}; what
 * happens between two hours is a difference or a quotient.
 */
final class Kept {
    /** Shoot and root stop growing on the water of the seed zone here [MPa]; chosen, no source. */
    private static final double GROWTH_STOPS_MPA = -1.0;

    /** Least growth in dry soil, on water from below; chosen, no source. */
    private static final double LEAST_GROWTH = 0.3;

    /** Seeds per kilogram at which a seal is fully felt; a larger seed pushes harder. */
    private static final double WEAK_SEEDS_PER_KG = 300_000;

    /** Even the worst hour leaves a few, so that no quotient is undefined. */
    private static final double LEAST_KEPT = 1e-3;

    /** Thermal time of shoot and root [C d]. */
    final double[] growthCd;

    /** Share of seed left by rain, 0 to 1. */
    final double[] rain;

    /** Hydrothermal progress in each hour for each MPa above the base potential [1/MPa]. */
    final double[] progressPerMpa;

    private final double[] heat;
    private final Species species;
    private final ThermalResponse warmth;
    private final double heatKillPerDegreeHour;
    private final double sealFelt;
    private boolean hot;

    Kept(Species species, int hours, StandRules.Seedling rules) {
        this.species = species;
        warmth = new ThermalResponse(species.cardinal());
        heatKillPerDegreeHour = rules.heatKillPerDegreeHour();
        sealFelt = Math.min(1, Math.cbrt(species.seedsPerKg() / WEAK_SEEDS_PER_KG));
        growthCd = new double[hours + 1];
        rain = new double[hours + 1];
        heat = new double[hours + 1];
        progressPerMpa = new double[hours];
        rain[0] = 1;
        heat[0] = 1;
    }

    /** Runs along a trace. */
    void run(TraceColumns.Column trace) {
        double perMpa = 1 / (24 * species.hydrothermalMpaCd());
        hot = false;
        for (int h = 0; h < progressPerMpa.length; h++) {
            double degrees = warmth.degrees(trace.tempC[h]);
            double water = Math.max(LEAST_GROWTH, 1 - trace.potentialMpa[h] / GROWTH_STOPS_MPA);
            progressPerMpa[h] = degrees * perMpa;
            growthCd[h + 1] = growthCd[h] + degrees * water / 24;
            double kept = trace.stayingFraction[h] * (1 - sealFelt * trace.sealedFraction[h]);
            rain[h + 1] = rain[h] * Math.max(LEAST_KEPT, kept);
            hot |= trace.surfaceTempC[h] > species.cardinal().lethalTempC();
        }
        if (hot) {
            scorch(trace.surfaceTempC);
        } else {
            Arrays.fill(heat, 1);
        }
    }

    private void scorch(double[] surfaceTempC) {
        for (int h = 0; h < surfaceTempC.length; h++) {
            double above = Math.max(0, surfaceTempC[h] - species.cardinal().lethalTempC());
            heat[h + 1] = heat[h] * Math.max(LEAST_KEPT, 1 - above * heatKillPerDegreeHour);
        }
    }

    /** True where the surface passes the lethal temperature on this trace. */
    boolean hot() {
        return hot;
    }

    /** Share that surface heat leaves of seedlings between two hours. */
    double heatBetween(int from, int to) {
        return heat[Math.min(heat.length - 1, to)] / heat[Math.max(0, from)];
    }
}
