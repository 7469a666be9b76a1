package rainward.stand.bed;

import rainward.farm.SoilTexture;

/** What hard rain does to bare soil: energy, erosivity and soil loss as in RUSLE. */
public final class RainErosion {
    private static final double SI_PER_US_ERODIBILITY = 0.1317;
    private static final double CARBON_PER_ORGANIC_MATTER = 1 / 1.724;

    private RainErosion() {}

    /**
     * Energy of a millimetre of rain, {@code e = 0.29 [1 - 0.72 exp(-0.05 i)]} (brown1987).
     *
     * @param intensityMmPerH of the rain [mm/h]
     * @return 0.08 to 0.29 [MJ/(ha mm)]
     */
    public static double unitEnergyMjPerHaMm(double intensityMmPerH) {
        return 0.29 * (1 - 0.72 * Math.exp(-0.05 * intensityMmPerH));
    }

    /**
     * Energy of an hour whose hardest half hour is known; the rest falls evenly in the other half.
     *
     * @param rainMm of the hour [mm]
     * @param peak30MmPerH greatest 30-minute intensity [mm/h]
     * @return energy [MJ/ha]
     */
    public static double hourEnergyMjPerHa(double rainMm, double peak30MmPerH) {
        double hardMm = Math.min(rainMm, peak30MmPerH / 2);
        double restMm = rainMm - hardMm;
        return hardMm * unitEnergyMjPerHaMm(2 * hardMm) + restMm * unitEnergyMjPerHaMm(2 * restMm);
    }

    /**
     * Slope factor: {@code 10.8 sin + 0.03} below 9 %, {@code 16.8 sin - 0.50} from there
     * (mccool1987); 1 at 9 %.
     *
     * @param slopeFraction rise over run
     */
    public static double slopeFactor(double slopeFraction) {
        double sine = slopeFraction / Math.sqrt(1 + slopeFraction * slopeFraction);
        return slopeFraction < 0.09 ? 10.8 * sine + 0.03 : 16.8 * sine - 0.50;
    }

    /**
     * Erodibility from texture and organic matter (williams1995), turned into SI.
     *
     * @return soil loss for one unit of erosivity [t h/(MJ mm)]
     */
    public static double erodibility(SoilTexture soil) {
        double sand = soil.sandFraction() * 100;
        double clay = soil.clayFraction() * 100;
        double silt = Math.max(0, 100 - sand - clay);
        double carbon = soil.organicMatterPct() * CARBON_PER_ORGANIC_MATTER;
        double fine = 1 - sand / 100;
        return SI_PER_US_ERODIBILITY
                * (0.2 + 0.3 * Math.exp(-0.0256 * sand * (1 - silt / 100)))
                * Math.pow((silt + 1e-9) / (clay + silt + 1e-9), 0.3)
                * (1 - 0.25 * carbon / (carbon + Math.exp(3.72 - 2.95 * carbon)))
                * (1 - 0.7 * fine / (fine + Math.exp(-5.51 + 22.9 * fine)));
    }

    /** What residue leaves of soil loss, {@code exp(-3.5 cover)} (renard1997). */
    public static double residueFactor(double coverFraction) {
        return Math.exp(-3.5 * coverFraction);
    }
}
