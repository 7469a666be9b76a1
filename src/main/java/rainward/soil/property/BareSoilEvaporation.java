package rainward.soil.property;

import rainward.farm.Require;
import rainward.farm.SoilTexture;

/**
 * Evaporation of bare soil by FAO-56 chapter 7 (dual crop coefficient): full rate until the readily
 * evaporable water is gone, then falling in a straight line. The column itself lets the soil
 * deliver what it can; this is its cross-check.
 *
 * @param totalMm evaporable water of the top, TEW, eq. 73 [mm]
 * @param readilyMm part of it that goes at full rate, REW, table 19 [mm]
 */
public record BareSoilEvaporation(double totalMm, double readilyMm) {

    public BareSoilEvaporation {
        Require.inRange("totalMm", totalMm, 1, 60);
        Require.inRange("readilyMm", readilyMm, 0.5, totalMm);
    }

    /**
     * TEW of a soil, eq. 73: {@code 1000 (thetaFC - 0.5 thetaWP) Ze}.
     *
     * @param fieldCapacityFraction thetaFC [m3/m3]
     * @param wiltingPointFraction thetaWP [m3/m3]
     * @param depthMm Ze, 100 to 150 [mm]
     */
    public static double totalMm(
            double fieldCapacityFraction, double wiltingPointFraction, double depthMm) {
        return (fieldCapacityFraction - 0.5 * wiltingPointFraction) * depthMm;
    }

    /**
     * REW of a texture: {@code 20 - 0.15 Sa} above 80 % sand, {@code 11 - 0.06 Cl} above 50 % clay,
     * else {@code 8 + 0.08 Cl} (Ritchie, in Allen and others 2005; from memory); within table 19.
     */
    public static double readilyMm(SoilTexture texture) {
        double sandPct = 100 * texture.sandFraction();
        double clayPct = 100 * texture.clayFraction();
        if (sandPct > 80) {
            return 20 - 0.15 * sandPct;
        }
        return clayPct > 50 ? 11 - 0.06 * clayPct : 8 + 0.08 * clayPct;
    }

    /** Reduction coefficient Kr after a depletion, eq. 74 [0 to 1]. */
    public double reductionFactor(double depletionMm) {
        double left = (totalMm - depletionMm) / (totalMm - readilyMm);
        return Math.max(0, Math.min(1, left));
    }

    /**
     * Evaporation of a day from soil all of which is bare and wetted, eq. 71.
     *
     * @param depletionMm De at the start of the day, after its rain [mm]
     * @param referenceMm ET0 of the day [mm]
     * @param bareCoefficient Kc max less Kcb
     * @return never more than is left [mm]
     */
    public double dayMm(double depletionMm, double referenceMm, double bareCoefficient) {
        double wanted = reductionFactor(depletionMm) * bareCoefficient * referenceMm;
        return Math.min(wanted, totalMm - depletionMm);
    }
}
