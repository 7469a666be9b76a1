package rainward.soil.property;

import rainward.farm.Require;
import rainward.farm.SoilTexture;

/**
 * Infiltration of a ponded or rained-on soil after Green and Ampt, {@code f = K (psi dtheta / F +
 * 1)} (Rawls, Brakensiek and Miller 1983).
 *
 * @param conductivityMmPerH behind the wetting front, half the saturated value [mm/h]
 * @param suctionMm at the wetting front [mm]
 */
public record GreenAmpt(double conductivityMmPerH, double suctionMm) {

    /** Air stays in the pores behind the front: K is half of Ks (Rawls and others 1983). */
    private static final double ENTRAPPED_AIR = 0.5;

    public GreenAmpt {
        Require.positive("conductivityMmPerH", conductivityMmPerH);
        Require.positive("suctionMm", suctionMm);
    }

    /**
     * From texture and pore space: K is half of the saturated conductivity of Saxton and Rawls, the
     * suction follows the regression of Rawls and Brakensiek 1985 (from memory, as river basin
     * models print it), with sand and clay in percent and porosity as a fraction.
     */
    public static GreenAmpt of(SoilTexture texture, SaxtonRawls water) {
        double s = Math.min(70, Math.max(5, 100 * texture.sandFraction()));
        double c = Math.min(60, Math.max(5, 100 * texture.clayFraction()));
        double n = water.saturationFraction();
        double exponent = 6.5309
                - 7.32561 * n
                + 0.001583 * c * c
                + 3.809479 * n * n
                + 0.000344 * s * c
                - 0.049837 * s * n
                + 0.001608 * s * s * n * n
                + 0.001602 * c * c * n * n
                - 0.0000136 * s * s * c
                - 0.003479 * c * c * n
                - 0.000799 * s * s * n;
        return new GreenAmpt(
                ENTRAPPED_AIR * water.saturatedConductivityMmPerH(), 10 * Math.exp(exponent));
    }

    /**
     * Capacity to infiltrate once {@code F} has gone in.
     *
     * @param infiltratedMm F, above 0 [mm]
     * @param deficitFraction pore space still empty ahead of the front, dtheta [m3/m3]
     * @return [mm/h]
     */
    public double capacityMmPerH(double infiltratedMm, double deficitFraction) {
        return conductivityMmPerH * (suctionMm * deficitFraction / infiltratedMm + 1);
    }

    /**
     * Infiltrated after a time under ponding, {@code F - psi dtheta ln(1 + F / (psi dtheta)) = K
     * t}, by Newton's method.
     *
     * @param hours since ponding began with nothing infiltrated [h]
     * @param deficitFraction dtheta, above 0 [m3/m3]
     * @return F [mm]
     */
    public double pondedMm(double hours, double deficitFraction) {
        double head = suctionMm * deficitFraction;
        double target = conductivityMmPerH * hours;
        double f = target + Math.sqrt(2 * head * target);
        for (int i = 0; i < 50; i++) {
            double miss = f - head * Math.log1p(f / head) - target;
            f -= miss * (head + f) / Math.max(f, 1e-12);
        }
        return f;
    }

    /**
     * Time to ponding under steady rain, {@code tp = K psi dtheta / (i (i - K))}.
     *
     * @param rainMmPerH steady intensity i [mm/h]
     * @param deficitFraction dtheta [m3/m3]
     * @return [h]; infinite where the rain never exceeds K
     */
    public double pondingH(double rainMmPerH, double deficitFraction) {
        double k = conductivityMmPerH;
        return rainMmPerH <= k
                ? Double.POSITIVE_INFINITY
                : k * suctionMm * deficitFraction / (rainMmPerH * (rainMmPerH - k));
    }

    /**
     * Infiltrated under steady rain that began at time zero.
     *
     * @param rainMmPerH steady intensity [mm/h]
     * @param deficitFraction dtheta [m3/m3]
     * @param hours since the rain began [h]
     * @return F [mm]
     */
    public double rainedMm(double rainMmPerH, double deficitFraction, double hours) {
        double ponding = pondingH(rainMmPerH, deficitFraction);
        if (hours <= ponding) {
            return rainMmPerH * hours;
        }
        double head = suctionMm * deficitFraction;
        double before = rainMmPerH * ponding;
        double shift = (before - head * Math.log1p(before / head)) / conductivityMmPerH;
        return pondedMm(hours - ponding + shift, deficitFraction);
    }
}
