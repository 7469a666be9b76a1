package rainward.soil;

import java.time.Instant;
import rainward.farm.Require;

/**
 * What a field's soil does on every trace. Arrays are {@code [hour][trace]}; entry {@code h} is the
 * state at the end of hour {@code h}. An array of one trace in the inner dimension is not allowed
 * to stand for all: every hour has all traces.
 *
 * @param start first hour, UTC
 * @param seedZone water and heat where the seed lies
 * @param surface what the top does with rain and work
 */
public record SoilRun(Instant start, SeedZone seedZone, SoilSurface surface) {

    public SoilRun {
        Require.that(
                seedZone.potentialMpa().length == surface.runoffMm().length,
                "seed zone and surface differ in hours");
    }

    public int hours() {
        return seedZone.potentialMpa().length;
    }

    public int traces() {
        return seedZone.potentialMpa()[0].length;
    }

    /**
     * Water and heat at sowing depth.
     *
     * @param depthCm sowing depth [cm]
     * @param potentialMpa matric potential, 0 wet to -150 air dry [MPa]
     * @param waterFraction volumetric water content [m3/m3]
     * @param tempC soil temperature at that depth [C]
     * @param surfaceTempC temperature of the surface [C]
     */
    public record SeedZone(
            double depthCm,
            double[][] potentialMpa,
            double[][] waterFraction,
            double[][] tempC,
            double[][] surfaceTempC) {}

    /**
     * What the top does.
     *
     * @param dryFrontCm depth down to which the soil is drier than wilting point [cm]
     * @param runoffMm water that ran off in the hour [mm]
     * @param workable true where the top is fit to till and sow
     */
    public record SoilSurface(double[][] dryFrontCm, double[][] runoffMm, boolean[][] workable) {}
}
