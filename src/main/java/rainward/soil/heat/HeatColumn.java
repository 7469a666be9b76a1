package rainward.soil.heat;

import java.util.Arrays;
import rainward.farm.SoilTexture;
import rainward.soil.FieldSoil;
import rainward.soil.SurfaceCondition;
import rainward.soil.property.HeatProperties;
import rainward.soil.property.Layers;
import rainward.soil.water.Traverse;
import rainward.soil.water.WaterColumn;

/**
 * Heat of one column on all traces, by the hour: conduction between layers, solved backward in
 * time, under a surface of two parts that share the ground. Leaves are a skin without heat of its
 * own, coupled to the soil by 10 W/m2/K and letting 5 % of the sun through (low vegetation in
 * TESSEL, van den Hurk and others 2000, from memory); bare ground takes the sun itself, residue
 * lying on it like leaves. Each part balances net radiation, heat to the air, heat of evaporation
 * (as the water column evaporates on that trace) and heat into the ground.
 *
 * <p>Conductivity, heat capacity and layering of the air are those of the mean over all traces, so
 * that one elimination serves all of them: traces differ by what they evaporate, by shade and by
 * albedo. Two layers of heat alone lie below the water, to 2 m.
 */
public final class HeatColumn {

    private static final double[] DEEP_MM = {400, 600};
    private static final double HOUR_S = 3600;

    /** Latent heat, 2.45 MJ/kg (FAO-56), by the hour [W h/m2/mm]. */
    private static final double LATENT_W_PER_MM = 2.45e6 / HOUR_S;

    private static final double SKIN_W_PER_M2_K = 10;
    private static final double SUN_THROUGH_LEAVES = 0.05;

    /** Albedo of grass (FAO-56 eq. 38) and of a loam dry and wet (Idso and others 1975). */
    private static final double LEAF_ALBEDO = 0.23;

    private static final double DRY_ALBEDO = 0.30;
    private static final double WET_ALBEDO = 0.14;

    /** Roughness and lift of the wind over the height of a stand, FAO-56 eq. 4. */
    private static final double ROUGHNESS_OF_HEIGHT = 0.123;

    private static final double LIFT_OF_HEIGHT = 0.67;

    /** Taller stands reach up to where the wind is told. */
    private static final double GREATEST_HEIGHT_M = 1.5;

    private static final double SOIL_ROUGHNESS_M = 0.005;

    /** Passes nothing on, where the ground is bare. */
    private static final SurfacePart NO_LEAVES = new SurfacePart(0, 1);

    private final Layers layers;
    private final HeatProperties[] properties;
    private final double[] thicknessM;
    private final double cover;
    private final double bare;
    private final double residue;
    private final double drag;

    /** Temperature of each layer on each trace [C]. */
    public final double[][] tempC;

    /** Temperature of the bare surface on each trace [C]. */
    public final double[] surfaceTempC;

    private final double[] conductivity;
    private final double[] capacity;
    private final double[] part;
    private final double[] own;
    private final double[] fromAbove;
    private double meanTempC;
    private double meanTopMm;

    public HeatColumn(FieldSoil soil, Layers layers, int traces) {
        int count = layers.count() + DEEP_MM.length;
        this.layers = layers;
        this.cover = soil.surface().vegetation().coverFraction();
        this.bare = 1 - cover;
        this.residue = soil.surface().residueFraction();
        this.drag = drag(soil.surface().vegetation());
        this.properties = new HeatProperties[count];
        this.thicknessM = new double[count];
        for (int l = 0; l < count; l++) {
            boolean deep = l >= layers.count();
            thicknessM[l] = (deep ? DEEP_MM[l - layers.count()] : layers.thicknessMm[l]) / 1000;
            properties[l] = propertiesOf(soil.texture(), waterLayer(l));
        }
        this.tempC = new double[count][traces];
        this.surfaceTempC = new double[traces];
        this.conductivity = new double[count];
        this.capacity = new double[count];
        this.part = new double[count];
        this.own = new double[count];
        this.fromAbove = new double[count];
    }

    /**
     * One roughness for the field: bare soil's and the stand's, weighted by cover on a log scale.
     */
    private static double drag(SurfaceCondition.Vegetation stand) {
        double heightM = Math.min(GREATEST_HEIGHT_M, stand.heightCm() / 100);
        double stems = Math.max(SOIL_ROUGHNESS_M, ROUGHNESS_OF_HEIGHT * heightM);
        double cover = stand.coverFraction();
        double roughness = Math.pow(stems, cover) * Math.pow(SOIL_ROUGHNESS_M, 1 - cover);
        return SurfaceHeat.drag(roughness, cover * LIFT_OF_HEIGHT * heightM);
    }

    private HeatProperties propertiesOf(SoilTexture texture, int layer) {
        return HeatProperties.of(texture, layers.poreMm[layer] / layers.thicknessMm[layer]);
    }

    /** The water layer that tells a heat layer its moisture. */
    private int waterLayer(int layer) {
        return Math.min(layer, layers.count() - 1);
    }

    public int count() {
        return tempC.length;
    }

    public void fill(int layer, double temp) {
        Arrays.fill(tempC[layer], temp);
    }

    /** Takes over the warmth of some traces of another column of the same soil. */
    public void take(HeatColumn from, int[] picked) {
        for (int l = 0; l < tempC.length; l++) {
            double[] there = from.tempC[l];
            Arrays.setAll(tempC[l], i -> there[picked[i]]);
        }
    }

    /**
     * One hour.
     *
     * @param air what the surface meets
     * @param shade share of the sun that reaches the ground on each trace
     * @param water column after its own hour
     */
    public void hour(SurfaceHeat air, double[] shade, WaterColumn water) {
        renewProperties(water);
        double half = thicknessM[0] / 2 / conductivity[0];
        SurfacePart leaves = cover > 0 ? leaves(air, half, water) : NO_LEAVES;
        SurfacePart ground = ground(air, half, water);
        Surface surface = new Surface(air, leaves, ground);
        takeIn(surface, shade, water);
        conduct(cover * leaves.couplingWPerM2K() + bare * ground.couplingWPerM2K());
        warmSurface(surface, shade, water);
    }

    /** The hour's air over the two parts. */
    private record Surface(SurfaceHeat air, SurfacePart leaves, SurfacePart ground) {}

    private void renewProperties(WaterColumn water) {
        meanTempC = Traverse.mean(tempC[0]);
        double mean = 0;
        for (int l = 0; l < count(); l++) {
            int from = waterLayer(l);
            mean = from == l ? Traverse.mean(water.waterMm[from]) : mean;
            meanTopMm = l == 0 ? mean : meanTopMm;
            conductivity[l] = properties[l].conductivityWPerMK(mean / layers.poreMm[from]);
            double held = properties[l].capacityJPerM3K(mean / layers.thicknessMm[from]);
            capacity[l] = held * thicknessM[l] / HOUR_S;
        }
    }

    private SurfacePart leaves(SurfaceHeat air, double half, WaterColumn water) {
        double mm = Traverse.mean(water.transpiredMm)
                + Traverse.mean(water.infiltration().leafEvaporationMm);
        double sun = (1 - LEAF_ALBEDO) * (1 - SUN_THROUGH_LEAVES) * air.sunWPerM2();
        double gain = sun - air.longwaveLossWPerM2() - LATENT_W_PER_MM * mm / Math.max(cover, 0.01);
        double skin = 1 / (1 / SKIN_W_PER_M2_K + half);
        return SurfacePart.settled(air, new SurfacePart.Ground(drag, skin, meanTempC), gain);
    }

    private SurfacePart ground(SurfaceHeat air, double half, WaterColumn water) {
        double albedo = albedo(meanTopMm);
        double mm = Traverse.mean(water.soilEvaporationMm);
        double sun = (1 - albedo) * air.sunWPerM2();
        double gain = sun - air.longwaveLossWPerM2() - LATENT_W_PER_MM * mm / Math.max(bare, 0.01);
        double skin = 1 / (residue / SKIN_W_PER_M2_K + half);
        return SurfacePart.settled(air, new SurfacePart.Ground(drag, skin, meanTempC), gain);
    }

    private double albedo(double topWaterMm) {
        return Math.max(WET_ALBEDO, DRY_ALBEDO - albedoPerMm() * topWaterMm);
    }

    private double albedoPerMm() {
        return (DRY_ALBEDO - WET_ALBEDO) / (layers.capacityWetness() * layers.poreMm[0]);
    }

    /** Turns the first layer into heat: its own, and what comes through either part. */
    private void takeIn(Surface surface, double[] shade, WaterColumn water) {
        double leafShare = surface.leaves.share();
        double bareShare = surface.ground.share();
        double coupling =
                cover * surface.leaves.couplingWPerM2K() + bare * surface.ground.couplingWPerM2K();
        double sun = surface.air.sunWPerM2();
        double leafSun = cover
                * (1 - LEAF_ALBEDO)
                * sun
                * ((1 - SUN_THROUGH_LEAVES) * leafShare + SUN_THROUGH_LEAVES);
        double bareSun = bare * bareShare * sun;
        double sky = surface.air.longwaveLossWPerM2() * (cover * leafShare + bare * bareShare);
        double steady = coupling * surface.air.airTempC() - sky;
        double fromBare = LATENT_W_PER_MM * bareShare;
        double fromLeaf = LATENT_W_PER_MM * leafShare;
        double perMm = albedoPerMm();
        double heat = capacity[0];
        double[] top = tempC[0];
        double[] wet = water.waterMm[0];
        double[] soil = water.soilEvaporationMm;
        for (int i = 0; i < top.length; i++) {
            double taken = 1 - Traverse.greater(WET_ALBEDO, DRY_ALBEDO - perMm * wet[i]);
            double lit = shade[i] * (leafSun + bareSun * taken);
            top[i] = heat * top[i] + steady + lit - fromBare * soil[i];
        }
        if (cover == 0) {
            return;
        }
        double[] drunk = water.transpiredMm;
        double[] film = water.infiltration().leafEvaporationMm;
        for (int i = 0; i < top.length; i++) {
            top[i] -= fromLeaf * (drunk[i] + film[i]);
        }
    }

    private void conduct(double coupling) {
        int last = count() - 1;
        double up = coupling;
        for (int l = 0; l <= last; l++) {
            double down = l == last ? 0 : between(l);
            double per = 1 / (capacity[l] + down + up * (l == 0 ? 1 : 1 - part[l - 1]));
            part[l] = down * per;
            own[l] = l == 0 ? per : capacity[l] * per;
            fromAbove[l] = l == 0 ? 0 : up * per;
            up = down;
        }
        for (int l = 0; l < last; l += 2) {
            downTwo(l);
        }
        for (int l = last - 1; l > 0; l -= 2) {
            upTwo(l);
        }
        Traverse.blend(tempC[0], 1, tempC[1], part[0]);
    }

    private void downTwo(int l) {
        double[] above = tempC[Math.max(0, l - 1)];
        double[] here = tempC[l];
        double[] below = tempC[l + 1];
        double own0 = own[l];
        double own1 = own[l + 1];
        double from0 = fromAbove[l];
        double from1 = fromAbove[l + 1];
        for (int i = 0; i < here.length; i++) {
            double t = here[i] * own0 + above[i] * from0;
            here[i] = t;
            below[i] = below[i] * own1 + t * from1;
        }
    }

    private void upTwo(int l) {
        double[] above = tempC[l - 1];
        double[] here = tempC[l];
        double[] below = tempC[l + 1];
        double partHere = part[l];
        double partAbove = part[l - 1];
        for (int i = 0; i < here.length; i++) {
            double t = here[i] + below[i] * partHere;
            here[i] = t;
            above[i] = above[i] + t * partAbove;
        }
    }

    /** Conductance between the middles of a layer and the next [W/m2/K]. */
    private double between(int l) {
        return 2 / (thicknessM[l] / conductivity[l] + thicknessM[l + 1] / conductivity[l + 1]);
    }

    private void warmSurface(Surface surface, double[] shade, WaterColumn water) {
        SurfacePart part = surface.ground;
        double share = part.share();
        double perGain = 1 / (part.skinWPerM2K() + part.lossWPerM2K());
        double steady =
                (1 - share) * surface.air.airTempC() - perGain * surface.air.longwaveLossWPerM2();
        double sun = perGain * surface.air.sunWPerM2();
        double latent = perGain * LATENT_W_PER_MM / Math.max(bare, 0.01);
        double perMm = albedoPerMm();
        double[] skin = surfaceTempC;
        double[] top = tempC[0];
        double[] wet = water.waterMm[0];
        double[] soil = water.soilEvaporationMm;
        for (int i = 0; i < skin.length; i++) {
            double taken = 1 - Traverse.greater(WET_ALBEDO, DRY_ALBEDO - perMm * wet[i]);
            skin[i] = share * top[i] + steady + sun * shade[i] * taken - latent * soil[i];
        }
    }
}
