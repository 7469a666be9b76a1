package rainward.soil.property;

import java.util.Arrays;
import rainward.farm.SoilTexture;

/**
 * The layers of a column and what each of them holds and passes; thin near the seed, thick below.
 * Wetness {@code s} is water over pore space; tension is one function of wetness for all layers, so
 * that work, which changes the pore space of the top, moves no water where wetness is even.
 */
public final class Layers {

    /** Depth of each layer's lower face [cm]. */
    private static final double[] BOTTOM_CM = {1, 2.5, 5, 7.5, 10, 20, 50, 150};

    /** Work reaches down to here [cm]. */
    private static final double WORKED_CM = 10;

    private static final double DRAINING_PATH_MM = 3000;

    /** Air dry: half of the wilting point, FAO-56 eq. 73. */
    private static final double AIR_DRY_SHARE = 0.5;

    public final SaxtonRawls matrix;
    public final double[] thicknessMm;
    public final double[] poreMm;
    public final double[] saturatedMmPerH;

    /**
     * Layers of a field.
     *
     * @param texture of the whole column
     * @param workedDensityFactor bulk density of the worked top over the normal one
     */
    public Layers(SoilTexture texture, double workedDensityFactor) {
        this.matrix = SaxtonRawls.of(texture);
        SaxtonRawls worked = SaxtonRawls.of(texture, workedDensityFactor);
        int count = BOTTOM_CM.length;
        this.thicknessMm = new double[count];
        this.poreMm = new double[count];
        this.saturatedMmPerH = new double[count];
        for (int l = 0; l < count; l++) {
            SaxtonRawls here = BOTTOM_CM[l] <= WORKED_CM ? worked : matrix;
            thicknessMm[l] = 10 * (BOTTOM_CM[l] - (l == 0 ? 0 : BOTTOM_CM[l - 1]));
            poreMm[l] = thicknessMm[l] * here.saturationFraction();
            saturatedMmPerH[l] = here.saturatedConductivityMmPerH();
        }
    }

    public int count() {
        return thicknessMm.length;
    }

    public double middleCm(int layer) {
        return BOTTOM_CM[layer] - thicknessMm[layer] / 20;
    }

    public double bottomCm(int layer) {
        return BOTTOM_CM[layer];
    }

    /** Distance between the middles of a layer and the next one down [mm]. */
    public double gapMm(int layer) {
        return (thicknessMm[layer] + thicknessMm[layer + 1]) / 2;
    }

    public double wiltingWetness() {
        return matrix.wiltingPointFraction() / matrix.saturationFraction();
    }

    public double capacityWetness() {
        return matrix.fieldCapacityFraction() / matrix.saturationFraction();
    }

    public double airDryWetness() {
        return AIR_DRY_SHARE * wiltingWetness();
    }

    /** Tension at full wetness on the curve of eq. [11] [mm of water]. */
    public double airEntryMm() {
        return matrix.tensionKpa(matrix.saturationFraction()) * 1000 / 9.80665;
    }

    /**
     * Share of the roots in each layer, {@code Y = 1 - beta^d} with beta 0.943 of temperate
     * grassland (Jackson and others 1996), cut at the root depth.
     */
    public double[] rootShares(double rootDepthCm) {
        double[] shares = new double[count()];
        double above = 0;
        for (int l = 0; l < count(); l++) {
            double below = 1 - Math.pow(0.943, Math.min(rootDepthCm, BOTTOM_CM[l]));
            shares[l] = below - above;
            above = below;
        }
        double total = Math.max(above, 1e-12);
        return Arrays.stream(shares).map(s -> s / total).toArray();
    }

    /** Evens out the values of the layers that end above a depth, by their thickness. */
    public void mix(double[] values, double depthCm) {
        double sum = 0;
        double thickness = 0;
        int within = 0;
        while (within < count() && BOTTOM_CM[within] <= depthCm) {
            sum += values[within] * thicknessMm[within];
            thickness += thicknessMm[within];
            within++;
        }
        Arrays.fill(values, 0, within, within == 0 ? 0 : sum / thickness);
    }

    /** Share of each layer that lies above the root depth. */
    public double[] rootedFractions(double rootDepthCm) {
        double[] fractions = new double[count()];
        for (int l = 0; l < count(); l++) {
            double top = BOTTOM_CM[l] - thicknessMm[l] / 10;
            double rooted = (rootDepthCm - top) * 10 / thicknessMm[l];
            fractions[l] = Math.max(0, Math.min(1, rooted));
        }
        return fractions;
    }

    /** Total available water of a root zone, FAO-56 eq. 82 [mm]. */
    public double availableMm(double[] rootedFractions) {
        double sum = 1e-9;
        for (int l = 0; l < count(); l++) {
            sum += rootedFractions[l] * poreMm[l] * (capacityWetness() - wiltingWetness());
        }
        return sum;
    }

    /**
     * Share of the water above field capacity that leaves a layer in an hour, {@code 1 -
     * exp(-1/T)}, however slow K(theta) has become. T is drainable water of a path of 3 m over Ks:
     * four times T then bracket the 50 h of a sandy loam and the 450 h of a clay loam that Jabro
     * and others 2009 measured from saturation to field capacity.
     */
    public double drainedShare(int layer) {
        double drainable = (1 - capacityWetness()) * poreMm[layer] / thicknessMm[layer];
        return 1 - Math.exp(-saturatedMmPerH[layer] / (drainable * DRAINING_PATH_MM));
    }

    /**
     * Share of bare-soil evaporation that comes from a layer of evenly moist soil: half of all
     * comes from the top centimetre, 95 % from the top ten (SWAT theory 2009, eq. 2:2.3.17 after
     * EPIC, from memory): {@code E(z) / E = z / (z + exp(2.374 - 0.00713 z))}, z in mm.
     *
     * @param layer counted from the top
     * @param count layers that evaporate
     * @return 0 to 1; all of them add up to 1
     */
    public double evaporationShare(int layer, int count) {
        double above = layer == 0 ? 0 : evaporatedAbove(BOTTOM_CM[layer - 1] * 10);
        return (evaporatedAbove(BOTTOM_CM[layer] * 10) - above)
                / evaporatedAbove(BOTTOM_CM[count - 1] * 10);
    }

    private static double evaporatedAbove(double depthMm) {
        return depthMm / (depthMm + Math.exp(2.374 - 0.00713 * depthMm));
    }

    /** Evaporable water of the highest layers, FAO-56 eq. 73 [mm]. */
    public double evaporableMm(int highest) {
        double sum = 0;
        for (int l = 0; l < highest; l++) {
            sum += (capacityWetness() - airDryWetness()) * poreMm[l];
        }
        return sum;
    }

    /** Layer that holds a depth; the lowest one for all that lies deeper. */
    public int layerAt(double depthCm) {
        int l = 0;
        while (l < count() - 1 && BOTTOM_CM[l] <= depthCm) {
            l++;
        }
        return l;
    }
}
