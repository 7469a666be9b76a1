package rainward.soil.property;

import rainward.farm.Require;
import rainward.farm.SoilTexture;

/**
 * How a soil holds and passes water, from its texture: Saxton and Rawls 2006, table 1 (source key
 * {@code saxton2006}, equations [1] to [11] and [14] to [18]). Sand and clay enter as fractions of
 * weight, organic matter in percent of weight. The regression holds for organic matter to 8 %, clay
 * to 60 % and densities of 1.0 to 1.8 g/cm3; outside, it is carried on.
 *
 * @param wiltingPointFraction water held at 1500 kPa, eq. [1] [m3/m3]
 * @param fieldCapacityFraction water held at 33 kPa, eq. [2], at a density factor eq. [9] [m3/m3]
 * @param saturationFraction pore space, eq. [5], at a density factor eq. [8] [m3/m3]
 * @param airEntryKpa tension at air entry, eq. [4]; the regression falls below zero in sand [kPa]
 * @param saturatedConductivityMmPerH eq. [16] [mm/h]
 */
public record SaxtonRawls(
        double wiltingPointFraction,
        double fieldCapacityFraction,
        double saturationFraction,
        double airEntryKpa,
        double saturatedConductivityMmPerH) {

    private static final double WILTING_KPA = 1500;
    private static final double CAPACITY_KPA = 33;
    private static final double GRAIN_DENSITY = 2.65;

    public SaxtonRawls {
        Require.that(
                wiltingPointFraction > 0
                        && fieldCapacityFraction > wiltingPointFraction
                        && saturationFraction > fieldCapacityFraction
                        && saturationFraction < 1,
                "water at wilting point, field capacity and saturation must rise in 0 to 1: "
                        + wiltingPointFraction
                        + ", "
                        + fieldCapacityFraction
                        + ", "
                        + saturationFraction);
    }

    /** Properties at the normal density of the texture. */
    public static SaxtonRawls of(SoilTexture texture) {
        return of(texture, 1);
    }

    /**
     * Properties at another density, as tilling and firming leave it.
     *
     * @param texture sand, clay and organic matter
     * @param densityFactor bulk density over normal density, 0.9 loose to 1.3 packed hard
     */
    public static SaxtonRawls of(SoilTexture texture, double densityFactor) {
        Require.inRange("densityFactor", densityFactor, 0.9, 1.3);
        double s = texture.sandFraction();
        double c = texture.clayFraction();
        double om = texture.organicMatterPct();
        double capacity = capacity(s, c, om);
        double drained = drained(s, c, om);
        double normal = capacity + drained - 0.097 * s + 0.043;
        double saturation = 1 - (1 - normal) * densityFactor;
        double held = capacity - 0.2 * (normal - saturation);
        double wilting = wilting(s, c, om);
        double lambda = Math.log(held / wilting) / Math.log(WILTING_KPA / CAPACITY_KPA);
        double ks = 1930 * Math.pow(saturation - held, 3 - lambda);
        return new SaxtonRawls(wilting, held, saturation, airEntry(s, c, drained), ks);
    }

    private static double wilting(double s, double c, double om) {
        double t = -0.024 * s
                + 0.487 * c
                + 0.006 * om
                + 0.005 * s * om
                - 0.013 * c * om
                + 0.068 * s * c
                + 0.031;
        return t + 0.14 * t - 0.02;
    }

    private static double capacity(double s, double c, double om) {
        double t = -0.251 * s
                + 0.195 * c
                + 0.011 * om
                + 0.006 * s * om
                - 0.027 * c * om
                + 0.452 * s * c
                + 0.299;
        return t + 1.283 * t * t - 0.374 * t - 0.015;
    }

    private static double drained(double s, double c, double om) {
        double t = 0.278 * s
                + 0.034 * c
                + 0.022 * om
                - 0.018 * s * om
                - 0.027 * c * om
                - 0.584 * s * c
                + 0.078;
        return t + 0.636 * t - 0.107;
    }

    private static double airEntry(double s, double c, double drained) {
        double t = -21.67 * s
                - 27.93 * c
                - 81.97 * drained
                + 71.12 * s * drained
                + 8.29 * c * drained
                + 14.05 * s * c
                + 27.16;
        return t + 0.02 * t * t - 0.113 * t - 0.70;
    }

    /** Exponent of the tension curve, eq. [15]. */
    public double exponentB() {
        return Math.log(WILTING_KPA / CAPACITY_KPA)
                / Math.log(fieldCapacityFraction / wiltingPointFraction);
    }

    /** Scale of the tension curve, eq. [14] [kPa]. */
    public double scaleAKpa() {
        return Math.exp(Math.log(CAPACITY_KPA) + exponentB() * Math.log(fieldCapacityFraction));
    }

    /** Slope of the logarithmic tension curve, eq. [18]. */
    public double lambda() {
        return 1 / exponentB();
    }

    /** Bulk density, eq. [6] [g/cm3]. */
    public double bulkDensityGPerCm3() {
        return GRAIN_DENSITY * (1 - saturationFraction);
    }

    /**
     * Tension at a water content, eq. [11], {@code psi = A theta^-B}. Printed for 1500 to 33 kPa;
     * here used over the whole range, which keeps one smooth curve from air dry to saturation.
     *
     * @param waterFraction above 0 [m3/m3]
     * @return tension, positive [kPa]
     */
    public double tensionKpa(double waterFraction) {
        return scaleAKpa() * Math.pow(waterFraction, -exponentB());
    }

    /**
     * Water held at a tension, eq. [11] turned round.
     *
     * @param tensionKpa positive [kPa]
     * @return at most saturation [m3/m3]
     */
    public double waterFractionAt(double tensionKpa) {
        double held = Math.pow(tensionKpa / scaleAKpa(), -1 / exponentB());
        return Math.min(saturationFraction, held);
    }

    /**
     * Conductivity at a water content, eq. [17], {@code Ks (theta / theta_s)^(3 + 2/lambda)}.
     *
     * @param waterFraction 0 to saturation [m3/m3]
     * @return conductivity [mm/h]
     */
    public double conductivityMmPerH(double waterFraction) {
        double wet = waterFraction / saturationFraction;
        return saturatedConductivityMmPerH * Math.pow(wet, 3 + 2 * exponentB());
    }
}
