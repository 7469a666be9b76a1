package rainward.soil;

import java.util.Arrays;
import rainward.farm.SoilTexture;

/**
 * Heat of one column on all traces, by the hour: conduction between layers, solved implicitly,
 * under a surface of two parts that share the ground. Leaves are a skin without heat of its own,
 * coupled to the soil by 10 W/m2/K and letting 5 % of the sun through (low vegetation in TESSEL,
 * van den Hurk and others 2000); bare ground takes the sun itself. Each part balances net
 * radiation, heat to the air, heat of evaporation (as the water column evaporates on that trace)
 * and heat into the ground.
 *
 * <p>Conductivity and heat capacity of a layer are those of its mean water over all traces, so that
 * one elimination serves all of them: traces differ by what they evaporate and by their albedo. Two
 * layers of heat alone lie below, to 2 m.
 */
final class HeatColumn {

    private static final double[] DEEP_MM = {400, 1000};
    private static final double LATENT_J_PER_MM = 2.45e6;
    private static final double HOUR_S = 3600;
    private static final double SKIN_W_PER_M2_K = 10;
    private static final double SUN_THROUGH_LEAVES = 0.05;
    private static final double LEAF_ALBEDO = 0.23;
    private static final double DRY_ALBEDO = 0.30;
    private static final double WET_ALBEDO = 0.14;
    private static final double GRASS_ROUGHNESS_M = 0.0148;
    private static final double SOIL_ROUGHNESS_M = 0.005;

    private final Layers layers;
    private final HeatProperties[] properties;
    private final double[] thicknessM;
    private final double cover;
    private final double residue;

    /** Temperature of each layer on each trace [C]. */
    final double[][] tempC;

    /** Temperature of the bare surface on each trace [C]. */
    final double[] surfaceTempC;

    private final double[] conductivity;
    private final double[] capacity;
    private final double[] part;

    HeatColumn(FieldSoil soil, Layers layers, int traces) {
        int count = layers.count() + DEEP_MM.length;
        this.layers = layers;
        this.cover = soil.surface().vegetation().coverFraction();
        this.residue = soil.surface().residueFraction();
        this.properties = new HeatProperties[count];
        this.thicknessM = new double[count];
        for (int l = 0; l < count; l++) {
            boolean deep = l >= layers.count();
            int water = Math.min(l, layers.count() - 1);
            double mm = deep ? DEEP_MM[l - layers.count()] : layers.thicknessMm[l];
            thicknessM[l] = mm / 1000;
            properties[l] = propertiesOf(soil.texture(), water);
        }
        this.tempC = new double[count][traces];
        this.surfaceTempC = new double[traces];
        this.conductivity = new double[count];
        this.capacity = new double[count];
        this.part = new double[count];
    }

    private HeatProperties propertiesOf(SoilTexture texture, int layer) {
        return HeatProperties.of(texture, layers.poreMm[layer] / layers.thicknessMm[layer]);
    }

    int count() {
        return tempC.length;
    }

    double middleCm(int layer) {
        double above = 0;
        for (int l = 0; l < layer; l++) {
            above += thicknessM[l];
        }
        return 100 * (above + thicknessM[layer] / 2);
    }

    void fill(int layer, double temp) {
        Arrays.fill(tempC[layer], temp);
    }

    /**
     * One hour.
     *
     * @param air what the surface meets
     * @param shade share of the sun that reaches the ground on each trace, 1 where no rain falls
     * @param water column after its own hour
     */
    void hour(SurfaceHeat air, double[] shade, WaterColumn water) {
        for (int l = 0; l < count(); l++) {
            int from = Math.min(l, layers.count() - 1);
            double mean = mean(water.waterMm[from]);
            conductivity[l] = properties[l].conductivityWPerMK(mean / layers.poreMm[from]);
            double held = properties[l].capacityJPerM3K(mean / layers.thicknessMm[from]);
            capacity[l] = held * thicknessM[l] / HOUR_S;
        }
        double coupling = force(air, shade, water);
        double down = 0;
        double up = coupling;
        for (int l = 0; l < count(); l++) {
            down = l == count() - 1 ? 0 : between(l);
            double before = l == 0 ? 0 : part[l - 1];
            double per = 1 / (capacity[l] + up + down - (l == 0 ? 0 : up * before));
            part[l] = down * per;
            sweepDown(l, l == 0 ? 0 : up, per);
            up = down;
        }
        for (int l = count() - 2; l >= 0; l--) {
            sweepUp(l);
        }
        finishSurface(air, water);
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double v : values) {
            sum += v;
        }
        return sum / values.length;
    }

    /** Conductance between the middles of a layer and the next [W/m2/K]. */
    private double between(int l) {
        return 2 / (thicknessM[l] / conductivity[l] + thicknessM[l + 1] / conductivity[l + 1]);
    }

    private double bareLoss;
    private double bareSkin;

    /**
     * Heat that comes in at the top where the ground were at zero degrees, held for the sweep in
     * the heat of the first layer; returns the loss per degree of ground temperature.
     */
    private double force(SurfaceHeat air, double[] shade, WaterColumn water) {
        double half = thicknessM[0] / 2 / conductivity[0];
        double leafSkin = 1 / (1 / SKIN_W_PER_M2_K + half);
        double meanT = mean(tempC[0]);
        double leafE = cover > 0
                ? (mean(water.transpiredMm) + mean(water.infiltration().leafEvaporationMm))
                        * LATENT_J_PER_MM
                        / HOUR_S
                        / cover
                : 0;
        double bareE =
                mean(water.soilEvaporationMm) * LATENT_J_PER_MM / HOUR_S / Math.max(.05, 1 - cover);
        double leafLoss = settle(
                air,
                GRASS_ROUGHNESS_M,
                leafSkin,
                meanT,
                (1 - LEAF_ALBEDO) * (1 - SUN_THROUGH_LEAVES) * air.sunWPerM2()
                        - air.longwaveLossWPerM2()
                        - leafE);
        double leafCoupling = leafSkin * leafLoss / (leafSkin + leafLoss);
        bareSkin = 1 / (residue / SKIN_W_PER_M2_K + half);
        bareLoss = settle(
                air,
                SOIL_ROUGHNESS_M,
                bareSkin,
                meanT,
                (1 - .2) * air.sunWPerM2() - air.longwaveLossWPerM2() - bareE);
        double bareCoupling = bareSkin * bareLoss / (bareSkin + bareLoss);
        double leafShare = leafCoupling / leafLoss;
        double bareShare = bareCoupling / bareLoss;
        double coupling = cover * leafCoupling + (1 - cover) * bareCoupling;
        double ta = air.airTempC();
        double leafSun = cover * (1 - LEAF_ALBEDO) * air.sunWPerM2();
        double leafGain = leafSun * ((1 - SUN_THROUGH_LEAVES) * leafShare + SUN_THROUGH_LEAVES);
        double bareSun = (1 - cover) * air.sunWPerM2() * bareShare;
        double sky = air.longwaveLossWPerM2() * (cover * leafShare + (1 - cover) * bareShare);
        double perMm = LATENT_J_PER_MM / HOUR_S;
        double perWet = (DRY_ALBEDO - WET_ALBEDO) / (layers.capacityWetness() * layers.poreMm[0]);
        double[] top = tempC[0];
        double heat = capacity[0];
        double[] wet = water.waterMm[0];
        double[] fromSoil = water.soilEvaporationMm;
        double[] fromLeaves = water.transpiredMm;
        double[] fromFilm = water.infiltration().leafEvaporationMm;
        for (int i = 0; i < top.length; i++) {
            double albedo = Math.max(WET_ALBEDO, DRY_ALBEDO - perWet * wet[i]);
            double sun = shade[i] * (leafGain + bareSun * (1 - albedo));
            double latent =
                    perMm * (fromSoil[i] * bareShare + (fromLeaves[i] + fromFilm[i]) * leafShare);
            top[i] = heat * top[i] + coupling * ta + sun - sky - latent;
            surfaceTempC[i] = ta
                    + (shade[i] * (1 - albedo) * air.sunWPerM2()
                                    - air.longwaveLossWPerM2()
                                    - perMm * fromSoil[i] / Math.max(0.05, 1 - cover))
                            / bareLoss;
        }
        return coupling;
    }

    private double settle(SurfaceHeat air, double rough, double skin, double groundT, double gain) {
        double warmer = 0, loss = 0;
        for (int k = 0; k < 6; k++) {
            loss = air.lossWPerM2K(rough, warmer);
            double w = (gain + skin * (groundT - air.airTempC())) / (loss + skin);
            warmer = 0.5 * (warmer + w);
        }
        return loss;
    }

    private void sweepDown(int layer, double up, double per) {
        double[] here = tempC[layer];
        if (layer == 0) {
            for (int i = 0; i < here.length; i++) {
                here[i] *= per;
            }
            return;
        }
        double heat = capacity[layer];
        double[] above = tempC[layer - 1];
        for (int i = 0; i < here.length; i++) {
            here[i] = (heat * here[i] + up * above[i]) * per;
        }
    }

    private void sweepUp(int layer) {
        double share = part[layer];
        double[] here = tempC[layer];
        double[] below = tempC[layer + 1];
        for (int i = 0; i < here.length; i++) {
            here[i] += share * below[i];
        }
    }

    /** The bare skin lies between what the air would make of it and the ground below. */
    private void finishSurface(SurfaceHeat air, WaterColumn water) {
        double ground = bareSkin / (bareSkin + bareLoss);
        double[] top = tempC[0];
        for (int i = 0; i < top.length; i++) {
            surfaceTempC[i] += ground * (top[i] - surfaceTempC[i]);
        }
    }
}
