package rainward.stand.bed;

import rainward.stand.SeedingConditions;
import rainward.stand.StandRules;

/**
 * What each hour's rain does to seed that lies in the ground: rills carry it off, a seal shuts it
 * in. Soil loss by RUSLE ({@link RainErosion}) comes from the share of the ground where rills run;
 * there the depth cut is spread exponentially, and seed is lost where it passes the sowing depth.
 */
public final class SurfaceDamage {
    /** Soil over a hectare of seed, a centimetre deep, at 1.2 t/m3 in a tilled bed [t/(ha cm)]. */
    private static final double COVER_T_PER_HA_CM = 120;

    /** Rolled ground holds together somewhat better; chosen here, no source. */
    private static final double FIRMED_FACTOR = 0.7;

    /** Silt share at which a seal is taken as full, a silt loam; chosen here, no source. */
    private static final double SEALING_SILT_FRACTION = 0.65;

    private final double coverTPerHa;
    private final double lossPerErosivity;
    private final double sealing;
    private final StandRules.Damage rules;

    public SurfaceDamage(SeedingConditions ground, double depthCm, StandRules.Damage rules) {
        this.rules = rules;
        double bare = RainErosion.residueFactor(ground.residueCoverFraction())
                * (ground.firmed() ? FIRMED_FACTOR : 1);
        coverTPerHa = COVER_T_PER_HA_CM * depthCm;
        lossPerErosivity = RainErosion.erodibility(ground.texture())
                * RainErosion.slopeFactor(ground.slopeFraction())
                * bare
                / rules.rillShare();
        double silt = 1 - ground.texture().sandFraction() - ground.texture().clayFraction();
        sealing = rules.sealPerMjPerHa() * bare * Math.min(1, silt / SEALING_SILT_FRACTION);
    }

    /**
     * Share of seed that an hour of rain leaves in place.
     *
     * @param energyMjPerHa of the hour [MJ/ha]
     * @param peak30MmPerH greatest 30-minute intensity [mm/h]
     * @return 0 to 1
     */
    public double stayingFraction(double energyMjPerHa, double peak30MmPerH) {
        double cutTPerHa = energyMjPerHa * peak30MmPerH * lossPerErosivity;
        return cutTPerHa > 0 ? 1 - Math.exp(-coverTPerHa / cutTPerHa) : 1;
    }

    /**
     * Share of small seed that an hour of rain seals in.
     *
     * @param energyMjPerHa of the hour [MJ/ha]
     * @param peak30MmPerH greatest 30-minute intensity [mm/h]
     * @return 0 to 1
     */
    public double sealedFraction(double energyMjPerHa, double peak30MmPerH) {
        return peak30MmPerH < rules.sealFromMmPerH() ? 0 : Math.min(1, sealing * energyMjPerHa);
    }
}
