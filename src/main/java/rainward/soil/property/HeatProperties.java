package rainward.soil.property;

import rainward.farm.Require;
import rainward.farm.SoilTexture;

/**
 * How a soil stores and conducts heat, by its water: the normalised conductivity of Cote and Konrad
 * 2005, {@code k = kdry + (ksat - kdry) kappa S / (1 + (kappa - 1) S)}, with the solids of Johansen
 * 1975; coefficients from memory.
 *
 * @param dryWPerMK conductivity of the dry soil [W/m/K]
 * @param saturatedWPerMK conductivity of the saturated soil [W/m/K]
 * @param shapeFactor kappa, 3.55 where sand rules, 1.9 in silt and clay
 * @param solidFraction share of volume that is not pores [m3/m3]
 */
public record HeatProperties(
        double dryWPerMK, double saturatedWPerMK, double shapeFactor, double solidFraction) {

    private static final double WATER_W_PER_M_K = 0.57;
    private static final double QUARTZ_W_PER_M_K = 7.7;

    /** Heat capacity of soil minerals and of water, de Vries 1963 [J/m3/K]. */
    private static final double SOLID_J_PER_M3_K = 1.92e6;

    private static final double WATER_J_PER_M3_K = 4.18e6;

    public HeatProperties {
        Require.positive("dryWPerMK", dryWPerMK);
        Require.inRange("saturatedWPerMK", saturatedWPerMK, dryWPerMK, 10);
    }

    /** Quartz is taken as the sand, as Peters-Lidard and others 1998 do. */
    public static HeatProperties of(SoilTexture texture, double saturationFraction) {
        double quartz = texture.sandFraction();
        double others = quartz > 0.2 ? 2.0 : 3.0;
        double solids = Math.pow(QUARTZ_W_PER_M_K, quartz) * Math.pow(others, 1 - quartz);
        double n = saturationFraction;
        return new HeatProperties(
                0.75 * Math.pow(10, -1.2 * n),
                Math.pow(solids, 1 - n) * Math.pow(WATER_W_PER_M_K, n),
                quartz > 0.5 ? 3.55 : 1.9,
                1 - n);
    }

    /** Conductivity at a wetness of 0 to 1 [W/m/K]. */
    public double conductivityWPerMK(double wetness) {
        double share = shapeFactor * wetness / (1 + (shapeFactor - 1) * wetness);
        return dryWPerMK + (saturatedWPerMK - dryWPerMK) * share;
    }

    /** Heat capacity at a water content [J/m3/K]. */
    public double capacityJPerM3K(double waterFraction) {
        return SOLID_J_PER_M3_K * solidFraction + WATER_J_PER_M3_K * waterFraction;
    }

    /**
     * Depth at which a wave of temperature is left to 1/e, {@code d = sqrt(2 D / w)} (Hillel 1982).
     *
     * @param diffusivityM2PerSecond D [m2/s]
     * @param periodSeconds of the wave [s]
     * @return [m]
     */
    public static double dampingDepthM(double diffusivityM2PerSecond, double periodSeconds) {
        return Math.sqrt(diffusivityM2PerSecond * periodSeconds / Math.PI);
    }
}
