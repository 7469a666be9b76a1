package rainward.stand.seedling;

import java.util.Arrays;
import rainward.farm.Species;
import rainward.stand.StandRules;
import rainward.stand.ThermalResponse;
import rainward.stand.bed.StepGrid;
import rainward.stand.bed.TraceColumns;

/**
 * Running sums and products along one trace for one kind of seed: growth so far, and the shares of
 * seed that rain and heat have left. Entry {@code t} holds up to the start of step {@code t}; what
 * happens between two steps is a difference or a quotient.
 */
public final class Kept {
    /** Shoot and root stop growing on the water of the seed zone here [MPa]; chosen, no source. */
    private static final double GROWTH_STOPS_MPA = -1.0;

    /**
     * Least growth while the root reaches water: below the seed the soil is moister than at it.
     * Where the root does not, the drying front decides ({@link SeedlingFates}). Chosen, no source.
     */
    private static final double LEAST_GROWTH = 0.7;

    /** Seeds per kilogram at which a seal is fully felt; a larger seed pushes harder. */
    private static final double WEAK_SEEDS_PER_KG = 300_000;

    /** Even the worst step leaves a few, so that no quotient is undefined. */
    private static final double LEAST_KEPT = 1e-3;

    /** Thermal time of shoot and root [C d]. */
    public final double[] growthCd;

    /** Share of seed left by rain, 0 to 1. */
    public final double[] rain;

    /** Hydrothermal progress in each step for each MPa above the base potential [1/MPa]. */
    public final double[] progressPerMpa;

    /** Potential against which base potentials are held: what seed feels, less what heat costs. */
    public final double[] startingMpa;

    private final double[] growth;
    private final double[] heat;
    private final double lethalTempC;
    private final ThermalResponse warmth;
    private final double stepDays;
    private final HydrothermalTime germination;
    private final double killPerDegree;
    private final double sealFelt;
    private boolean hot;

    public Kept(Species species, StepGrid grid, StandRules.Seedling rules) {
        lethalTempC = species.cardinal().lethalTempC();
        warmth = new ThermalResponse(species.cardinal());
        stepDays = grid.days();
        germination = new HydrothermalTime(species);
        killPerDegree = rules.heatKillPerDegreeHour() * grid.stepHours();
        sealFelt = Math.min(1, Math.cbrt(species.seedsPerKg() / WEAK_SEEDS_PER_KG));
        growth = new double[grid.steps()];
        growthCd = new double[grid.steps() + 1];
        rain = new double[grid.steps() + 1];
        heat = new double[grid.steps() + 1];
        progressPerMpa = new double[grid.steps()];
        startingMpa = new double[grid.steps()];
        rain[0] = 1;
        heat[0] = 1;
    }

    /** Runs along a trace. */
    public void run(TraceColumns.Column trace) {
        weigh(trace.tempC, trace.potentialMpa, trace.feltPotentialMpa);
        double grown = 0;
        for (int t = 0; t < growth.length; t++) {
            grown += growth[t];
            growthCd[t + 1] = grown;
        }
        if (trace.rained()) {
            wash(trace);
        } else {
            Arrays.fill(rain, 1);
        }
        hot = trace.hottestC() > lethalTempC;
        if (hot) {
            scorch(trace.surfaceTempC());
        }
    }

    /** What each step does by itself; nothing is carried over, so that the loops vectorise. */
    private void weigh(double[] tempC, double[] potentialMpa, double[] feltMpa) {
        grow(tempC, potentialMpa);
        for (int t = 0; t < progressPerMpa.length; t++) {
            progressPerMpa[t] = germination.progressPerMpaDay(tempC[t]) * stepDays;
        }
        for (int t = 0; t < startingMpa.length; t++) {
            startingMpa[t] = feltMpa[t] - germination.heatRiseMpa(tempC[t]);
        }
    }

    private void grow(double[] tempC, double[] potentialMpa) {
        for (int t = 0; t < growth.length; t++) {
            double water = Math.max(LEAST_GROWTH, 1 - potentialMpa[t] * (1 / GROWTH_STOPS_MPA));
            growth[t] = warmth.degrees(tempC[t]) * stepDays * water;
        }
    }

    private void wash(TraceColumns.Column trace) {
        for (int t = 0; t < growth.length; t++) {
            double open = 1 - sealFelt * (1 - trace.openFraction[t]);
            rain[t + 1] = rain[t] * Math.max(LEAST_KEPT, trace.stayingFraction[t] * open);
        }
    }

    private void scorch(double[] surfaceTempC) {
        for (int t = 0; t < surfaceTempC.length; t++) {
            double above = Math.max(0, surfaceTempC[t] - lethalTempC);
            heat[t + 1] = heat[t] * Math.max(LEAST_KEPT, 1 - above * killPerDegree);
        }
    }

    /** Share that surface heat leaves of seedlings between two steps. */
    public double heatBetween(int from, int to) {
        if (!hot) {
            return 1;
        }
        return heat[Math.min(heat.length - 1, to)] / heat[Math.max(0, from)];
    }
}
