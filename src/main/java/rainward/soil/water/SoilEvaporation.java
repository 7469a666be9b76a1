package rainward.soil.water;

import java.util.Arrays;
import rainward.farm.SoilTexture;
import rainward.soil.property.BareSoilEvaporation;
import rainward.soil.property.Layers;
import rainward.soil.property.VapourPath;

/**
 * What the sun takes from bare soil in an hour, on all traces. Demand is cut by the lesser of two:
 *
 * <ul>
 *   <li>what the soil delivers as water, FAO-56 eq. 71 and 74: at full rate until the readily
 *       evaporable water is gone, then falling in a straight line. Depletion is weighed by the
 *       depth that evaporation comes from ({@link Layers#evaporationShare}), so that a shower on
 *       dry ground dries at once, and soil that dries evenly does what FAO-56 prints;
 *   <li>what passes the dry soil on top as vapour ({@link VapourPath}).
 * </ul>
 *
 * <p>The layers share in it by that depth and by what they still hold above air-dry.
 */
final class SoilEvaporation {

    /** Depth of the soil that evaporates, Ze of FAO-56 eq. 73 [cm]. */
    private static final double EVAPORATING_CM = 10;

    private final Layers layers;
    private final int count;
    private final double[] shares;
    private final double perStageTwo;
    private final double perDryMm;

    /** Taken in the hour [mm]. */
    final double[] takenMm;

    private final double[] moist;
    private final double[] dryMm;
    private final double[] dryAbove;
    private final double[] wanted;

    /** By layer: its part in {@link #moist}, and so in what is taken. */
    private final double[][] draw;

    SoilEvaporation(SoilTexture texture, Layers layers, int traces) {
        this.layers = layers;
        this.count = layers.layerAt(EVAPORATING_CM - 0.01) + 1;
        this.shares = new double[count];
        Arrays.setAll(shares, l -> layers.evaporationShare(l, count));
        double readilyShare = BareSoilEvaporation.readilyMm(texture) / layers.evaporableMm(count);
        this.perStageTwo = 1 / (1 - Math.min(0.9, readilyShare));
        this.perDryMm = VapourPath.of(layers).perDryMm();
        this.takenMm = new double[traces];
        this.moist = new double[traces];
        this.dryMm = new double[traces];
        this.dryAbove = new double[traces];
        this.wanted = new double[traces];
        this.draw = new double[count][traces];
    }

    /**
     * One hour.
     *
     * @param demandMm of wet soil under a clear sky [mm]
     * @param shade share of it that each trace asks for, 0 to 1
     * @param waterMm of each layer, lowered here [mm]
     */
    void hour(double demandMm, double[] shade, double[][] waterMm) {
        Arrays.fill(takenMm, 0);
        if (demandMm <= 0) {
            return;
        }
        Arrays.fill(moist, 0);
        for (int l = 0; l < count; l++) {
            look(l, waterMm[l]);
        }
        lookForDry(waterMm);
        for (int i = 0; i < wanted.length; i++) {
            double delivered = Traverse.lesser(1, moist[i] * perStageTwo);
            double passed = 1 / (1 + perDryMm * dryMm[i]);
            wanted[i] =
                    demandMm * shade[i] * Traverse.lesser(delivered, passed) / (moist[i] + 1e-9);
        }
        for (int l = 0; l < count; l++) {
            take(l, waterMm[l]);
        }
    }

    /** Adds up, by the layer's share, what it holds above air-dry over that at field capacity. */
    private void look(int layer, double[] water) {
        double airDry = airDryMm(layer);
        double perMm = perMm(layer, airDry);
        double share = shares[layer];
        double[] drawn = draw[layer];
        for (int i = 0; i < water.length; i++) {
            double part = Traverse.positive(Traverse.lesser(share, perMm * (water[i] - airDry)));
            drawn[i] = part;
            moist[i] += part;
        }
    }

    private double airDryMm(int layer) {
        return layers.airDryWetness() * layers.poreMm[layer];
    }

    /**
     * Soil below wilting point counts as dry by how near to air-dry it is, as far as all above it
     * is dry too; so the search ends at a layer that is moist on every trace.
     */
    private void lookForDry(double[][] waterMm) {
        Arrays.fill(dryMm, 0);
        Arrays.fill(dryAbove, 1);
        double left = 1;
        for (int l = 0; l < count && left > 0; l++) {
            addDry(l, waterMm[l]);
            left = Traverse.mean(dryAbove);
        }
    }

    private void addDry(int layer, double[] water) {
        double airDry = airDryMm(layer);
        double perDry = 1 / (layers.wiltingWetness() * layers.poreMm[layer] - airDry);
        double thicknessMm = layers.thicknessMm[layer];
        for (int i = 0; i < water.length; i++) {
            double here = Traverse.positive(1 - Traverse.positive((water[i] - airDry) * perDry));
            double dry = dryAbove[i] * here;
            dryAbove[i] = dry;
            dryMm[i] += thicknessMm * dry;
        }
    }

    /** A layer's share for each millimetre above air-dry; the whole share at field capacity. */
    private double perMm(int layer, double airDryMm) {
        return shares[layer] / (layers.capacityWetness() * layers.poreMm[layer] - airDryMm);
    }

    private void take(int layer, double[] water) {
        double airDry = airDryMm(layer);
        double[] drawn = draw[layer];
        for (int i = 0; i < water.length; i++) {
            double held = Traverse.positive(water[i] - airDry);
            double taken = Traverse.lesser(held, wanted[i] * drawn[i]);
            water[i] -= taken;
            takenMm[i] += taken;
        }
    }
}
