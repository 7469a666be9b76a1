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
    private final double diffusivityMm2PerH;

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

    WaterColumn(FieldSoil soil, Layers layers, int traces) {
        this.layers = layers;
        this.traces = traces;
        this.infiltration = new Infiltration(soil, layers, traces);
        double b = layers.matrix.exponentB();
        this.power = new WetnessPower(b + 1);
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
        this.diffusivityMm2PerH = b * layers.airEntryMm();
        this.waterMm = new double[layers.count()][traces];
        this.soilEvaporationMm = new double[traces];
        this.transpiredMm = new double[traces];
        this.drainedMm = new double[traces];
        this.inflow = new double[traces];
        this.demand = new double[traces];
        this.diffusivity = new double[layers.count()][traces];
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
     * @param rainMm on each trace [mm]
     * @param peak30MmPerH on each trace [mm/h]
     * @param referenceMm reference evapotranspiration of the hour [mm]
     * @param shade share of it that each trace asks for, 0 to 1
     */
    void hour(double[] rainMm, double[] peak30MmPerH, double referenceMm, double[] shade) {
        double plants = referenceMm * plantDemandShare;
        for (int i = 0; i < traces; i++) {
            demand[i] = plants * shade[i];
        }
        Arrays.fill(transpiredMm, 0);
        infiltration.hour(rainMm, peak30MmPerH, waterMm, demand, inflow);
        evaporate(referenceMm * soilDemandShare, shade);
        for (int l = 0; l < layers.count(); l++) {
            descend(l);
        }
        System.arraycopy(inflow, 0, drainedMm, 0, traces);
        for (int l = 0; l < layers.count(); l++) {
            eliminate(l);
        }
        for (int l = layers.count() - 1; l >= 0; l--) {
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

    /** Inflow enters, roots drink, gravity drains what the exact law lets go in an hour. */
    private void descend(int layer) {
        double pore = layers.poreMm[layer];
        double perPore = 1 / pore;
        double ks = layers.saturatedMmPerH[layer];
        double dry = layers.wiltingWetness() * pore;
        double perEasy = 1 / ((layers.capacityWetness() * pore - dry) * (1 - EASY_SHARE));
        double roots = rootShares[layer];
        double d = diffusivityMm2PerH * ks;
        double rest = power.rest;
        double b1 = power.bit1;
        double b2 = power.bit2;
        double b4 = power.bit4;
        double b8 = power.bit8;
        double o0 = drainage[layer].offsetMm[0];
        double o1 = drainage[layer].offsetMm[1];
        double o2 = drainage[layer].offsetMm[2];
        double o3 = drainage[layer].offsetMm[3];
        double o4 = drainage[layer].offsetMm[4];
        double s0 = drainage[layer].slopeH[0];
        double s1 = drainage[layer].slopeH[1];
        double s2 = drainage[layer].slopeH[2];
        double s3 = drainage[layer].slopeH[3];
        double s4 = drainage[layer].slopeH[4];
        double[] water = waterMm[layer];
        double[] in = inflow;
        double[] wanted = demand;
        double[] drunk = transpiredMm;
        double[] diff = diffusivity[layer];
        for (int i = 0; i < water.length; i++) {
            double w = water[i] + in[i];
            double surplus = Math.max(0, w - pore);
            double ease = Math.min(1, Math.max(0, (w - dry) * perEasy));
            double drink = wanted[i] * roots * ease;
            w -= surplus + drink;
            double x = w * perPore;
            double p = WetnessPower.raise(x, rest, b1, b2, b4, b8);
            double k = ks * p * p * x;
            double loss = Math.min(
                    Math.min(k, Math.min(o0 + s0 * k, o1 + s1 * k)),
                    Math.min(o2 + s2 * k, Math.min(o3 + s3 * k, o4 + s4 * k)));
            w -= loss;
            x = w * perPore;
            diff[i] = d * x * WetnessPower.raise(x, rest, b1, b2, b4, b8);
            water[i] = w;
            in[i] = surplus + loss;
            drunk[i] += drink;
        }
    }

    private void eliminate(int layer) {
        double pore = layers.poreMm[layer];
        boolean first = layer == 0;
        boolean last = layer == layers.count() - 1;
        double up = first ? 0 : 0.5 / layers.gapMm(layer - 1);
        double down = last ? 0 : 0.5 / layers.gapMm(layer);
        double[] here = diffusivity[layer];
        double[] above = diffusivity[first ? 0 : layer - 1];
        double[] below = diffusivity[last ? layer : layer + 1];
        double[] water = waterMm[layer];
        double[] waterAbove = waterMm[first ? 0 : layer - 1];
        double[] shareAbove = share[first ? 0 : layer - 1];
        double[] shareHere = share[layer];
        for (int i = 0; i < water.length; i++) {
            double fromAbove = up * (above[i] + here[i]);
            double fromBelow = down * (here[i] + below[i]);
            double part = first ? 0 : shareAbove[i];
            double rest = first ? 0 : waterAbove[i];
            double per = 1 / (pore + fromAbove * (1 - part) + fromBelow);
            shareHere[i] = fromBelow * per;
            water[i] = (water[i] + fromAbove * rest) * per;
        }
    }

    private void substitute(int layer) {
        double pore = layers.poreMm[layer];
        boolean last = layer == layers.count() - 1;
        double perPoreBelow = last ? 0 : 1 / layers.poreMm[layer + 1];
        double[] water = waterMm[layer];
        double[] below = waterMm[last ? layer : layer + 1];
        double[] shareHere = share[layer];
        for (int i = 0; i < water.length; i++) {
            double wet = water[i] + (last ? 0 : shareHere[i] * below[i] * perPoreBelow);
            water[i] = wet * pore;
        }
    }
}
