package rainward.soil;

import java.util.Arrays;
import rainward.farm.Require;

/**
 * What becomes of an hour's rain before it is soil water: leaves hold some, the soil takes what
 * Green and Ampt allow in each half hour, hollows keep the rest until they are full, and what is
 * left runs off. The harder half hour comes first and gets the greatest 30-minute intensity.
 *
 * <p>Capacity of a half hour {@code t} after {@code F} has gone in is the explicit solution of Li,
 * Stevens and Simons 1976, {@code (K t - 2F + sqrt((K t - 2F)^2 + 8 K t (psi dtheta + F))) / 2},
 * within 8 % of the exact one.
 */
final class Infiltration {

    private static final double HALF_HOUR = 0.5;

    /** Pore space ahead of the wetting front is looked for down to here [mm]. */
    private static final double REACH_MM = 200;

    /**
     * Share of what has gone in that still counts an hour later: after the six dry hours that end a
     * storm (RUSLE), a tenth is left.
     */
    private static final double MEMORY = 0.68;

    /** Water that a unit of leaf area holds, Dickinson 1984 [mm]. */
    private static final double LEAF_FILM_MM = 0.2;

    private final Layers layers;
    private final GreenAmpt capacity;
    private final double leavesMm;
    private final double hollowsMm;

    final double[] leafMm;
    final double[] pondMm;
    final double[] goneInMm;
    final double[] runoffMm;
    final double[] leafEvaporationMm;
    private final double[] space;

    Infiltration(FieldSoil soil, Layers layers, int traces) {
        this.layers = layers;
        SurfaceCondition surface = soil.surface();
        SaxtonRawls top = SaxtonRawls.of(soil.texture(), surface.tilth().densityFactor());
        this.capacity = GreenAmpt.of(soil.texture(), top);
        double cover = Math.min(0.95, surface.vegetation().coverFraction());
        // Leaf area behind a cover: Beer's law with 0.65 for grass leaves.
        this.leavesMm = LEAF_FILM_MM * -Math.log(1 - cover) / 0.65;
        this.hollowsMm = surface.tilth().hollowsMm(soil.slopeFraction());
        this.leafMm = new double[traces];
        this.pondMm = new double[traces];
        this.goneInMm = new double[traces];
        this.runoffMm = new double[traces];
        this.leafEvaporationMm = new double[traces];
        this.space = new double[traces];
        Require.that(hollowsMm >= 0, "hollows hold " + hollowsMm);
    }

    void fill(double leaf, double pond, double goneIn) {
        Arrays.fill(leafMm, leaf);
        Arrays.fill(pondMm, pond);
        Arrays.fill(goneInMm, goneIn);
    }

    /**
     * One hour; lowers the plants' demand by what wet leaves give up, sets the inflow.
     *
     * @param rainMm on each trace [mm]
     * @param peak30MmPerH on each trace [mm/h]
     * @param waterMm of each layer [mm]
     * @param demand of the plants [mm]
     * @param inflow into the top layer, set here [mm]
     */
    void hour(
            double[] rainMm,
            double[] peak30MmPerH,
            double[][] waterMm,
            double[] demand,
            double[] inflow) {
        measureSpace(waterMm);
        double k = capacity.conductivityMmPerH() * HALF_HOUR;
        double suction = capacity.suctionMm();
        double[] leaf = leafMm;
        double[] pond = pondMm;
        double[] before = goneInMm;
        double[] empty = space;
        double[] ran = runoffMm;
        double[] dried = leafEvaporationMm;
        for (int i = 0; i < inflow.length; i++) {
            double onLeaf = leaf[i] + rainMm[i];
            double through = Math.max(0, onLeaf - leavesMm);
            onLeaf -= through;
            double up = Math.min(onLeaf, demand[i]);
            leaf[i] = onLeaf - up;
            dried[i] = up;
            demand[i] -= up;

            double f = before[i];
            double head = suction * Math.max(0, empty[i] + f / REACH_MM);
            double burst = Math.min(through, HALF_HOUR * peak30MmPerH[i]);
            double wet = pond[i] + burst;
            double a = k - 2 * f;
            double first = Math.min(wet, 0.5 * (a + Math.sqrt(a * a + 8 * k * (head + f))));
            f += first;
            wet += through - burst - first;
            a = k - 2 * f;
            double second = Math.min(wet, 0.5 * (a + Math.sqrt(a * a + 8 * k * (head + f))));
            wet -= second;
            double kept = Math.min(wet, hollowsMm);
            ran[i] = wet - kept;
            pond[i] = kept;
            inflow[i] = first + second;
            before[i] = (f + second) * MEMORY;
        }
    }

    /** Mean empty pore space above the reach, as a fraction of volume. */
    private void measureSpace(double[][] waterMm) {
        Arrays.fill(space, 0);
        double[] all = space;
        for (int l = 0; l <= layers.layerAt(REACH_MM / 10 - 1e-9); l++) {
            double pore = layers.poreMm[l];
            double[] water = waterMm[l];
            for (int i = 0; i < all.length; i++) {
                all[i] += (pore - water[i]) * (1 / REACH_MM);
            }
        }
    }
}
