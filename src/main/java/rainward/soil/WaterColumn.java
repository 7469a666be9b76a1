package rainward.soil;

import java.util.Arrays;

/**
 * The water of one column on all traces, stepped hour by hour. Every array runs over traces and
 * every loop touches one index only, so that it vectorises. An hour: rain meets leaves, hollows and
 * the soil's capacity to infiltrate; the sun takes from the top and roots from below; gravity
 * carries down layer by layer; capillarity evens out wetness, solved implicitly. What goes in and
 * what comes out add up to the change of storage to rounding.
 */
final class WaterColumn {

    /** Greatest crop coefficient of wet bare soil, FAO-56 eq. 72 at 2 m/s, 45 % and low growth. */
    private static final double WET_SOIL_COEFFICIENT = 1.2;

    /** Basal crop coefficient under full cover, the level of turf grass in FAO-56 table 17. */
    private static final double FULL_COVER_COEFFICIENT = 1.05;

    /** Share of available water gone before roots feel it, turf grass in FAO-56 table 22. */
    private static final double EASY_SHARE = 0.4;

    /** Evaporation falls by 5 % for each 10 % of ground under residue, FAO-56 chapter 11. */
    private static final double RESIDUE_SHELTER = 0.5;

    private final Layers layers;
    private final int traces;
    private final Infiltration infiltration;
    private final WetnessPower power;
    private final Drainage[] drainage;
    private final double[] rootShares;
    private final double soilDemandShare;
    private final double plantDemandShare;
    private final double diffusivityMm;

    /** Water of each layer on each trace [mm]. */
    final double[][] waterMm;

    /** What the hour took from the ground, by way of the sun [mm]. */
    final double[] soilEvaporationMm;

    final double[] transpiredMm;
    final double[] drainedMm;

    private final double[] inflow;
    private final double[] demand;
    private final double[][] diffusivity;
    private final double[][] share;
    private final double[] raised;

    WaterColumn(FieldSoil soil, Layers layers, int traces) {
        this.layers = layers;
        this.traces = traces;
        this.infiltration = new Infiltration(soil, layers, traces);
        double b = layers.matrix.exponentB();
        this.power = new WetnessPower((b + 1) / 2);
        this.drainage = new Drainage[layers.count()];
        for (int l = 0; l < layers.count(); l++) {
            drainage[l] = new Drainage(layers.poreMm[l], layers.saturatedMmPerH[l], 2 * b + 3);
        }
        SurfaceCondition surface = soil.surface();
        double cover = surface.vegetation().coverFraction();
        this.rootShares = layers.rootShares(surface.vegetation().rootDepthCm());
        this.soilDemandShare = WET_SOIL_COEFFICIENT
                * (1 - cover)
                * (1 - RESIDUE_SHELTER * surface.residueFraction());
        this.plantDemandShare = FULL_COVER_COEFFICIENT * cover;
        this.diffusivityMm = b * layers.airEntryMm();
        this.waterMm = new double[layers.count()][traces];
        this.soilEvaporationMm = new double[traces];
        this.transpiredMm = new double[traces];
        this.drainedMm = new double[traces];
        this.inflow = new double[traces];
        this.demand = new double[traces];
        this.diffusivity = new double[layers.count()][traces];
        this.raised = new double[traces];
        this.share = new double[layers.count()][traces];
    }

    Infiltration infiltration() {
        return infiltration;
    }

    /** Sets a layer to the same water on all traces. */
    void fill(int layer, double waterFraction) {
        double water = waterFraction * layers.thicknessMm[layer];
        Arrays.fill(waterMm[layer], Math.min(layers.poreMm[layer], Math.max(0, water)));
    }

    /**
     * One hour.
     *
     * @param rain on each trace
     * @param referenceMm reference evapotranspiration of the hour [mm]
     * @param shade share of it that each trace asks for, 0 to 1
     */
    void hour(RainHour rain, double referenceMm, double[] shade) {
        double plants = referenceMm * plantDemandShare;
        for (int i = 0; i < traces; i++) {
            demand[i] = plants * shade[i];
        }
        Arrays.fill(transpiredMm, 0);
        infiltration.hour(rain, waterMm, demand, inflow);
        evaporate(referenceMm * soilDemandShare, shade);
        for (int l = 0; l < layers.count(); l++) {
            descend(l);
        }
        System.arraycopy(inflow, 0, drainedMm, 0, traces);
        evenOut();
    }

    private void descend(int layer) {
        fill(layer);
        if (plantDemandShare > 0) {
            drink(layer);
        }
        double perPore = 1 / layers.poreMm[layer];
        power.raise(waterMm[layer], perPore, raised);
        drain(layer);
        power.raise(waterMm[layer], perPore, raised);
        diffuse(layer);
    }

    /** Capillarity between layers, backward in time: one elimination down, one substitution up. */
    private void evenOut() {
        int last = layers.count() - 1;
        eliminateTop();
        for (int l = 1; l < last; l++) {
            eliminate(l);
        }
        eliminateBottom(last);
        for (int l = last - 1; l >= 0; l--) {
            substitute(l);
        }
    }

    /** The sun takes what it wants from the top layer, down to air dry. */
    private void evaporate(double wantedMm, double[] shade) {
        double[] top = waterMm[0];
        double airDry = layers.airDryWetness() * layers.poreMm[0];
        double[] in = inflow;
        double[] out = soilEvaporationMm;
        for (int i = 0; i < top.length; i++) {
            double taken = Math.min(wantedMm * shade[i], Math.max(0, top[i] + in[i] - airDry));
            top[i] -= taken;
            out[i] = taken;
        }
    }

    /** Inflow enters; what the pores cannot hold is handed down. */
    private void fill(int layer) {
        double pore = layers.poreMm[layer];
        double[] water = waterMm[layer];
        double[] in = inflow;
        for (int i = 0; i < water.length; i++) {
            double w = water[i] + in[i];
            double surplus = Math.max(0, w - pore);
            water[i] = w - surplus;
            in[i] = surplus;
        }
    }

    /** Roots take their share, less as the layer dries to wilting point, FAO-56 eq. 84. */
    private void drink(int layer) {
        double pore = layers.poreMm[layer];
        double dry = layers.wiltingWetness() * pore;
        double perEasy = 1 / ((layers.capacityWetness() * pore - dry) * (1 - EASY_SHARE));
        double roots = rootShares[layer];
        double[] water = waterMm[layer];
        double[] wanted = demand;
        double[] drunk = transpiredMm;
        for (int i = 0; i < water.length; i++) {
            double ease = Math.min(1, Math.max(0, (water[i] - dry) * perEasy));
            double drink = wanted[i] * roots * ease;
            water[i] -= drink;
            drunk[i] += drink;
        }
    }

    /** Gravity drains an hour's worth. */
    private void drain(int layer) {
        double k1 = layers.saturatedMmPerH[layer] / layers.poreMm[layer];
        double b = drainage[layer].b;
        double c = drainage[layer].c;
        double d = drainage[layer].d;
        double[] water = waterMm[layer];
        double[] in = inflow;
        double[] half = raised;
        for (int i = 0; i < water.length; i++) {
            double h2 = half[i] * half[i];
            double k = k1 * h2 * h2 * water[i];
            double loss = k * (1 + b * k) / (1 + k * (c + d * k));
            water[i] -= loss;
            in[i] += loss;
        }
    }

    private void diffuse(int layer) {
        double d = diffusivityMm * layers.saturatedMmPerH[layer] / layers.poreMm[layer];
        double[] water = waterMm[layer];
        double[] half = raised;
        double[] diff = diffusivity[layer];
        for (int i = 0; i < water.length; i++) {
            double h2 = half[i] * half[i];
            diff[i] = h2 * water[i] * d;
        }
    }

    private void eliminateTop() {
        double pore = layers.poreMm[0];
        double down = 0.5 / layers.gapMm(0);
        double[] here = diffusivity[0];
        double[] below = diffusivity[1];
        double[] water = waterMm[0];
        double[] part = share[0];
        for (int i = 0; i < water.length; i++) {
            double fromBelow = down * (here[i] + below[i]);
            double per = 1 / (pore + fromBelow);
            part[i] = fromBelow * per;
            water[i] *= per;
        }
    }

    private void eliminate(int layer) {
        double pore = layers.poreMm[layer];
        double up = 0.5 / layers.gapMm(layer - 1);
        double down = 0.5 / layers.gapMm(layer);
        double[] here = diffusivity[layer];
        double[] above = diffusivity[layer - 1];
        double[] below = diffusivity[layer + 1];
        double[] water = waterMm[layer];
        double[] wetAbove = waterMm[layer - 1];
        double[] partAbove = share[layer - 1];
        double[] part = share[layer];
        for (int i = 0; i < water.length; i++) {
            double fromAbove = up * (above[i] + here[i]);
            double fromBelow = down * (here[i] + below[i]);
            double per = 1 / (pore + fromAbove * (1 - partAbove[i]) + fromBelow);
            part[i] = fromBelow * per;
            water[i] = (water[i] + fromAbove * wetAbove[i]) * per;
        }
    }

    private void eliminateBottom(int layer) {
        double pore = layers.poreMm[layer];
        double up = 0.5 / layers.gapMm(layer - 1);
        double[] here = diffusivity[layer];
        double[] above = diffusivity[layer - 1];
        double[] water = waterMm[layer];
        double[] wetAbove = waterMm[layer - 1];
        double[] partAbove = share[layer - 1];
        for (int i = 0; i < water.length; i++) {
            double fromAbove = up * (above[i] + here[i]);
            double wet =
                    (water[i] + fromAbove * wetAbove[i]) / (pore + fromAbove * (1 - partAbove[i]));
            water[i] = wet * pore;
        }
    }

    private void substitute(int layer) {
        double pore = layers.poreMm[layer];
        double perPoreBelow = 1 / layers.poreMm[layer + 1];
        double[] water = waterMm[layer];
        double[] below = waterMm[layer + 1];
        double[] part = share[layer];
        for (int i = 0; i < water.length; i++) {
            double wet = water[i] + part[i] * below[i] * perPoreBelow;
            water[i] = wet * pore;
        }
    }
}
