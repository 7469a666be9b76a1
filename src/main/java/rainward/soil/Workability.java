package rainward.soil;

import rainward.farm.Machine.MassClass;
import rainward.farm.SoilTexture;

/**
 * When ground is fit to till and sow, and when it carries the machine: water of the top against a
 * share of field capacity. Shares of 0.90 to 0.95 for tillage and planting and up to 1.0 for
 * traffic are the order of magnitude in Rotz and Harrigan 2005 and Rounsevell and Jones 1993 (from
 * memory); the steps between texture and mass classes are common practice, no source.
 *
 * @param workableShare of field capacity, mean of the top 10 cm
 * @param trafficableShare of field capacity, mean of the top 20 cm
 */
public record Workability(double workableShare, double trafficableShare) {

    /** Limits for a soil and the machine that is to go there. */
    public static Workability of(SoilTexture texture, MassClass machine) {
        double lighter = switch (machine) {
            case LIGHT -> 0.02;
            case MEDIUM -> 0;
            case HEAVY -> -0.03;
        };
        // Clay sticks and smears: from 1.00 in sand to 0.90 from a third of clay on.
        double share = 1 - 0.10 * Math.min(1, texture.clayFraction() / 0.35);
        return new Workability(share + lighter, 1.02 + lighter);
    }
}
