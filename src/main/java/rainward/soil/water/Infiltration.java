package rainward.soil.water;

import java.util.Arrays;
import rainward.soil.FieldSoil;
import rainward.soil.SoilState;
import rainward.soil.SurfaceCondition;
import rainward.soil.property.GreenAmpt;
import rainward.soil.property.Layers;
import rainward.soil.property.SaxtonRawls;

/**
 * What becomes of an hour's rain before it is soil water: leaves hold some, the soil takes what
 * Green and Ampt allow in each half hour, hollows keep the rest until they are full, and what is
 * left runs off. The harder half hour comes first and gets the greatest 30-minute intensity.
 *
 * <p>Capacity of a half hour {@code t} after {@code F} has gone in is the explicit solution of Li,
 * Stevens and Simons 1976, {@code (K t - 2F + sqrt((K t - 2F)^2 + 8 K t (psi dtheta + F))) / 2},
 * within 8 % of the exact one.
 */
public final class Infiltration {

    private static final double HALF_HOUR = 0.5;

    /** Pore space ahead of the wetting front is looked for down to here [mm]. */
    private static final double REACH_MM = 200;

    /**
     * Share of what has gone in that still counts an hour later: after the six dry hours that end a
     * storm in RUSLE, a tenth is left.
     */
    private static final double MEMORY = 0.68;

    /** Water that a unit of leaf area holds, Dickinson 1984, from memory [mm]. */
    private static final double LEAF_FILM_MM = 0.2;

    /** Extinction of light in grass leaves, from cover back to leaf area; common practice. */
    private static final double LEAF_EXTINCTION = 0.65;

    private final Layers layers;
    private final double halfHourMm;
    private final double suctionMm;
    private final double leavesMm;
    private final double hollowsMm;

    /** Water on leaves [mm]. */
    public final double[] leafMm;

    /** Water in hollows [mm]. */
    public final double[] pondMm;

    /** Infiltrated by the storm under way, fading once it ends [mm]. */
    public final double[] goneInMm;

    /** Ran off in the hour [mm]. */
    public final double[] runoffMm;

    /** Went from wet leaves into the air in the hour [mm]. */
    public final double[] leafEvaporationMm;

    private final double[] dripping;
    private double[] through;
    private final int[] wet;
    private int wetCount;
    private boolean ranOff;

    public Infiltration(FieldSoil soil, Layers layers, int traces) {
        this.layers = layers;
        SurfaceCondition surface = soil.surface();
        SaxtonRawls top = SaxtonRawls.of(soil.texture(), surface.tilth().densityFactor());
        GreenAmpt capacity = GreenAmpt.of(soil.texture(), top);
        this.halfHourMm = HALF_HOUR * capacity.conductivityMmPerH();
        this.suctionMm = capacity.suctionMm();
        double cover = Math.min(0.95, surface.vegetation().coverFraction());
        this.leavesMm = LEAF_FILM_MM * -Math.log(1 - cover) / LEAF_EXTINCTION;
        this.hollowsMm = surface.tilth().hollowsMm(soil.slopeFraction());
        this.leafMm = new double[traces];
        this.pondMm = new double[traces];
        this.goneInMm = new double[traces];
        this.runoffMm = new double[traces];
        this.leafEvaporationMm = new double[traces];
        this.dripping = new double[traces];
        this.through = dripping;
        this.wet = new int[traces + 1];
    }

    /** True where water ran off in the hour on one trace at least. */
    public boolean ranOff() {
        return ranOff;
    }

    public void fill(SoilState.Wetting wetting) {
        Arrays.fill(leafMm, wetting.leafMm());
        Arrays.fill(pondMm, wetting.pondMm());
        Arrays.fill(goneInMm, wetting.goneInMm());
    }

    void take(Infiltration from, int[] picked) {
        Arrays.setAll(leafMm, WaterColumn.at(from.leafMm, picked));
        Arrays.setAll(pondMm, WaterColumn.at(from.pondMm, picked));
        Arrays.setAll(goneInMm, WaterColumn.at(from.goneInMm, picked));
    }

    /**
     * One hour; lowers the plants' demand by what wet leaves give up, sets the inflow.
     *
     * @param rain on each trace
     * @param waterMm of each layer [mm]
     * @param demand of the plants [mm]
     * @param inflow into the top layer, set here [mm]
     */
    public void hour(RainHour rain, double[][] waterMm, double[] demand, double[] inflow) {
        Arrays.fill(inflow, 0);
        passLeaves(rain.amountMm(), demand);
        if (ranOff) {
            Arrays.fill(runoffMm, 0);
            ranOff = false;
        }
        findWet();
        for (int w = 0; w < wetCount; w++) {
            enter(wet[w], rain, waterMm, inflow);
        }
        for (int i = 0; i < goneInMm.length; i++) {
            goneInMm[i] *= MEMORY;
        }
    }

    /** Traces on which water stands or falls; in most hours they are few. */
    private void findWet() {
        int count = 0;
        for (int i = 0; i < through.length; i++) {
            wet[count] = i;
            count += through[i] + pondMm[i] > 0 ? 1 : 0;
        }
        wetCount = count;
    }

    /** The burst stands on the ground with what stood there, then the rest of the rain. */
    private void enter(int i, RainHour rain, double[][] waterMm, double[] inflow) {
        double before = goneInMm[i];
        double first = Math.min(through[i], HALF_HOUR * rain.peak30MmPerH()[i]);
        double soaked = soak(i, pondMm[i] + first, waterMm, before);
        double stands = pondMm[i] + first - soaked + (through[i] - first);
        double later = soak(i, stands, waterMm, before);
        inflow[i] = soaked + later;
        double left = stands - later;
        double kept = Math.min(left, hollowsMm);
        pondMm[i] = kept;
        runoffMm[i] = left - kept;
        ranOff |= left > kept;
    }

    private void passLeaves(double[] rainMm, double[] demand) {
        if (leavesMm == 0) {
            through = rainMm;
            return;
        }
        System.arraycopy(rainMm, 0, dripping, 0, dripping.length);
        through = dripping;
        double held = leavesMm;
        double[] leaf = leafMm;
        double[] falls = through;
        double[] dried = leafEvaporationMm;
        for (int i = 0; i < falls.length; i++) {
            double onLeaf = leaf[i] + falls[i];
            falls[i] = Math.max(0, onLeaf - held);
            leaf[i] = onLeaf - falls[i];
        }
        for (int i = 0; i < falls.length; i++) {
            double up = Math.min(leaf[i], demand[i]);
            dried[i] = up;
            leaf[i] -= up;
            demand[i] -= up;
        }
    }

    /**
     * Suction times the empty pore space, psi dtheta; what the storm has filled counts as empty.
     */
    private double head(int i, double[][] waterMm, double beforeMm) {
        double empty = beforeMm;
        for (int l = 0; l < layers.count() && layers.bottomCm(l) * 10 <= REACH_MM; l++) {
            empty += layers.poreMm[l] - waterMm[l][i];
        }
        return empty * suctionMm / REACH_MM;
    }

    /**
     * Half an hour of what stands goes in, up to capacity, which is never below that of K alone.
     */
    private double soak(int i, double standsMm, double[][] waterMm, double beforeMm) {
        double f = goneInMm[i];
        if (standsMm <= halfHourMm) {
            goneInMm[i] = f + standsMm;
            return standsMm;
        }
        double head = head(i, waterMm, beforeMm);
        double a = halfHourMm - 2 * f;
        double capacity = 0.5 * (a + Math.sqrt(a * a + 8 * halfHourMm * (head + f)));
        double in = Math.min(standsMm, capacity);
        goneInMm[i] = f + in;
        return in;
    }
}
