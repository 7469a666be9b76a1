package rainward.soil.water;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import rainward.soil.FieldSoil;
import rainward.soil.SurfaceCondition;
import rainward.soil.property.Layers;
import rainward.soil.property.MatrixConductivity;

/**
 * The water of one column on all traces, stepped hour by hour. Every array runs over traces and
 * every loop touches one index only, so that it vectorises. An hour: rain meets leaves, hollows and
 * the soil's capacity to infiltrate; the sun takes from the top and roots from below; gravity
 * carries down layer by layer; capillarity evens out wetness, solved implicitly. What goes in and
 * what comes out add up to the change of storage to rounding.
 */
public final class WaterColumn {

    /** Greatest crop coefficient of wet bare soil, FAO-56 eq. 72 at 2 m/s, 45 % and low growth. */
    private static final double WET_SOIL_COEFFICIENT = 1.2;

    /** Evaporation falls by 5 % for each 10 % of ground under residue, FAO-56 chapter 11. */
    private static final double RESIDUE_SHELTER = 0.5;

    private final Layers layers;
    private final int traces;
    private final Infiltration infiltration;
    private final SoilEvaporation evaporation;
    private final WetnessPower power;
    private final Drainage[] drainage;
    private final double[] rootShares;
    private final double soilDemandShare;
    private final double plantDemandShare;
    private final double diffusivityMm;

    /** Water of each layer on each trace [mm]. */
    public final double[][] waterMm;

    /** What the hour took from the ground, by way of the sun [mm]. */
    public final double[] soilEvaporationMm;

    public final double[] transpiredMm;
    public final double[] drainedMm;

    private final double[] inflow;
    private final double[] demand;

    /** Between each layer and the next, for half a millimetre of wetness [mm]. */
    private final double[][] conductance;

    private final double[][] share;
    private final double[] available;
    private final double[] active;
    private final double[] rootedFraction;
    private final double rootZoneMm;
    private final double depletionFraction;
    private final double[] raised;
    private final double[] drainedShares;

    public WaterColumn(FieldSoil soil, Layers layers, int traces) {
        this.layers = layers;
        this.traces = traces;
        this.infiltration = new Infiltration(soil, layers, traces);
        this.evaporation = new SoilEvaporation(soil.texture(), layers, traces);
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
        this.plantDemandShare = cover * surface.vegetation().basalCoefficient();
        double feeding = Math.sqrt(layers.wiltingWetness() * layers.capacityWetness());
        this.diffusivityMm =
                MatrixConductivity.share(soil.texture(), feeding) * b * layers.airEntryMm();
        this.waterMm = new double[layers.count()][traces];
        this.soilEvaporationMm = evaporation.takenMm;
        this.transpiredMm = new double[traces];
        this.drainedMm = new double[traces];
        this.inflow = new double[traces];
        this.demand = new double[traces];
        this.conductance = new double[layers.count() - 1][traces];
        this.available = new double[traces];
        this.active = new double[traces];
        this.depletionFraction = surface.vegetation().depletionFraction();
        this.rootedFraction = layers.rootedFractions(surface.vegetation().rootDepthCm());
        this.rootZoneMm = layers.availableMm(rootedFraction);
        this.raised = new double[traces];
        this.drainedShares = new double[layers.count()];
        Arrays.setAll(drainedShares, layers::drainedShare);
        this.share = new double[layers.count()][traces];
    }

    public Infiltration infiltration() {
        return infiltration;
    }

    /** Sets a layer to the same water on all traces. */
    public void fill(int layer, double waterFraction) {
        double water = waterFraction * layers.thicknessMm[layer];
        Arrays.fill(waterMm[layer], Math.min(layers.poreMm[layer], Math.max(0, water)));
    }

    /** Takes over the water of some traces of another column of the same soil. */
    public void take(WaterColumn from, int[] picked) {
        for (int l = 0; l < waterMm.length; l++) {
            Arrays.setAll(waterMm[l], at(from.waterMm[l], picked));
        }
        infiltration.take(from.infiltration, picked);
    }

    static IntToDoubleFunction at(double[] values, int[] picked) {
        return i -> values[picked[i]];
    }

    /**
     * One hour.
     *
     * @param rain on each trace
     * @param referenceMm reference evapotranspiration of the hour [mm]
     * @param shade share of it that each trace asks for, 0 to 1
     */
    public void hour(RainHour rain, double referenceMm, double[] shade) {
        if (plantDemandShare > 0) {
            double plants = referenceMm * plantDemandShare;
            for (int i = 0; i < traces; i++) {
                demand[i] = plants * shade[i];
            }
            Arrays.fill(transpiredMm, 0);
        }
        infiltration.hour(rain, waterMm, demand, inflow);
        evaporation.hour(referenceMm * soilDemandShare, shade, waterMm);
        if (plantDemandShare > 0) {
            askRoots();
        }
        for (int l = 0; l < layers.count(); l++) {
            descend(l);
        }
        System.arraycopy(inflow, 0, drainedMm, 0, traces);
        evenOut();
    }

    private void descend(int layer) {
        enter(layer);
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
        int l = last - 1;
        for (; l > 0; l -= 2) {
            substituteTwo(l);
        }
        if (l == 0) {
            substitute(l);
        }
    }

    /**
     * What the plants ask of each layer: the demand, times the stress of the whole root zone
     * (FAO-56 eq. 84, {@code Ks = (TAW - Dr) / ((1 - p) TAW)}), shared among layers by roots and by
     * water at hand, so that deep water makes up for a dry top.
     */
    private void askRoots() {
        Arrays.fill(available, 0);
        Arrays.fill(active, 0);
        for (int l = 0; l < layers.count(); l++) {
            addRoots(l);
        }
        double perEasy = 1 / ((1 - depletionFraction) * rootZoneMm);
        double[] wanted = demand;
        double[] held = available;
        double[] reach = active;
        for (int i = 0; i < wanted.length; i++) {
            double unstressed = Math.min(1, held[i] * perEasy);
            wanted[i] = wanted[i] * unstressed / (reach[i] + 1e-9);
        }
    }

    private void addRoots(int layer) {
        double dry = layers.wiltingWetness() * layers.poreMm[layer];
        double full = layers.capacityWetness() * layers.poreMm[layer] - dry;
        double rooted = rootedFraction[layer];
        double roots = rootShares[layer] / full;
        double[] water = waterMm[layer];
        double[] held = available;
        double[] reach = active;
        for (int i = 0; i < water.length; i++) {
            double here = Math.min(full, Math.max(0, water[i] - dry));
            held[i] += rooted * here;
            reach[i] += roots * here;
        }
    }

    private void drink(int layer) {
        double dry = layers.wiltingWetness() * layers.poreMm[layer];
        double full = layers.capacityWetness() * layers.poreMm[layer] - dry;
        double roots = rootShares[layer] / full;
        double[] water = waterMm[layer];
        double[] wanted = demand;
        double[] drunk = transpiredMm;
        for (int i = 0; i < water.length; i++) {
            double here = Math.max(0, water[i] - dry);
            double drink = Math.min(here, wanted[i] * roots * Math.min(full, here));
            water[i] -= drink;
            drunk[i] += drink;
        }
    }

    /** Inflow enters; what the pores cannot hold is handed down. */
    private void enter(int layer) {
        double pore = layers.poreMm[layer];
        double[] water = waterMm[layer];
        double[] in = inflow;
        for (int i = 0; i < water.length; i++) {
            double w = water[i] + in[i];
            double surplus = Traverse.positive(w - pore);
            water[i] = w - surplus;
            in[i] = surplus;
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
        double capacity = layers.capacityWetness() * layers.poreMm[layer];
        double part = drainedShares[layer];
        for (int i = 0; i < water.length; i++) {
            double h2 = half[i] * half[i];
            double k = k1 * h2 * h2 * water[i];
            double slow = k * (1 + b * k) / (1 + k * (c + d * k));
            double loss = Traverse.greater(slow, part * (water[i] - capacity));
            water[i] -= loss;
            in[i] += loss;
        }
    }

    /**
     * Adds half of the layer's diffusivity to what joins it to its neighbours. That lies ready
     * before the elimination, whose loop would otherwise be too long to vectorise.
     */
    private void diffuse(int layer) {
        double half = diffusivityMm * layers.saturatedMmPerH[layer] / layers.poreMm[layer] / 2;
        if (layer == 0) {
            joinBelow(layer, half / layers.gapMm(0));
        } else if (layer == layers.count() - 1) {
            joinAbove(layer, half / layers.gapMm(layer - 1));
        } else {
            join(layer, half / layers.gapMm(layer - 1), half / layers.gapMm(layer));
        }
    }

    private void joinBelow(int layer, double perGap) {
        double[] water = waterMm[layer];
        double[] half = raised;
        double[] below = conductance[layer];
        for (int i = 0; i < water.length; i++) {
            below[i] = half[i] * half[i] * water[i] * perGap;
        }
    }

    private void joinAbove(int layer, double perGap) {
        double[] water = waterMm[layer];
        double[] half = raised;
        double[] above = conductance[layer - 1];
        for (int i = 0; i < water.length; i++) {
            above[i] += half[i] * half[i] * water[i] * perGap;
        }
    }

    private void join(int layer, double perGapAbove, double perGapBelow) {
        double[] water = waterMm[layer];
        double[] half = raised;
        double[] above = conductance[layer - 1];
        double[] below = conductance[layer];
        for (int i = 0; i < water.length; i++) {
            double diffusivity = half[i] * half[i] * water[i];
            above[i] += diffusivity * perGapAbove;
            below[i] = diffusivity * perGapBelow;
        }
    }

    private void eliminateTop() {
        double pore = layers.poreMm[0];
        double[] down = conductance[0];
        double[] water = waterMm[0];
        double[] part = share[0];
        for (int i = 0; i < water.length; i++) {
            double per = 1 / (pore + down[i]);
            part[i] = down[i] * per;
            water[i] *= per;
        }
    }

    private void eliminate(int layer) {
        double pore = layers.poreMm[layer];
        double[] up = conductance[layer - 1];
        double[] down = conductance[layer];
        double[] water = waterMm[layer];
        double[] wetAbove = waterMm[layer - 1];
        double[] partAbove = share[layer - 1];
        double[] part = share[layer];
        for (int i = 0; i < water.length; i++) {
            double per = 1 / (pore + up[i] * (1 - partAbove[i]) + down[i]);
            part[i] = down[i] * per;
            water[i] = (water[i] + up[i] * wetAbove[i]) * per;
        }
    }

    private void eliminateBottom(int layer) {
        double pore = layers.poreMm[layer];
        double[] up = conductance[layer - 1];
        double[] water = waterMm[layer];
        double[] wetAbove = waterMm[layer - 1];
        double[] partAbove = share[layer - 1];
        for (int i = 0; i < water.length; i++) {
            double wet = (water[i] + up[i] * wetAbove[i]) / (pore + up[i] * (1 - partAbove[i]));
            water[i] = wet * pore;
        }
    }

    /** A layer and the one above it in one pass. */
    private void substituteTwo(int layer) {
        double pore = layers.poreMm[layer];
        double poreAbove = layers.poreMm[layer - 1];
        double perPoreBelow = 1 / layers.poreMm[layer + 1];
        double[] above = waterMm[layer - 1];
        double[] water = waterMm[layer];
        double[] below = waterMm[layer + 1];
        double[] partAbove = share[layer - 1];
        double[] part = share[layer];
        for (int i = 0; i < water.length; i++) {
            double wet = water[i] + part[i] * below[i] * perPoreBelow;
            water[i] = wet * pore;
            above[i] = (above[i] + partAbove[i] * wet) * poreAbove;
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
