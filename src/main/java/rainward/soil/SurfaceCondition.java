package rainward.soil;

import rainward.farm.Require;

/**
 * What work and plants have made of the top of a field.
 *
 * @param tilth how the seedbed lies
 * @param residueFraction share of the ground under dead residue, 0 to 1
 * @param vegetation what still grows there
 */
public record SurfaceCondition(Tilth tilth, double residueFraction, Vegetation vegetation) {

    /** Nothing on it, nothing done to it. */
    public static final SurfaceCondition BARE =
            new SurfaceCondition(Tilth.SETTLED, 0, Vegetation.NONE);

    /** Freshly tilled, clean. */
    public static final SurfaceCondition TILLED =
            new SurfaceCondition(Tilth.LOOSE, 0, Vegetation.NONE);

    /** Tilled, then rolled, clean. */
    public static final SurfaceCondition FIRMED =
            new SurfaceCondition(Tilth.FIRMED, 0, Vegetation.NONE);

    /** Short grass, as weather stations stand in. */
    public static final SurfaceCondition SHORT_GRASS =
            new SurfaceCondition(Tilth.SETTLED, 0, Vegetation.SHORT_GRASS);

    public SurfaceCondition {
        Require.inRange("residueFraction", residueFraction, 0, 1);
    }

    /**
     * How the top lies: its density over the normal density of the texture, and how rough it is.
     * Densities lie within the range of the density factor of Saxton and Rawls 2006; roughness of a
     * tilled seedbed is common practice, no source.
     */
    public enum Tilth {
        /** Tilled and not yet rolled. */
        LOOSE(0.9, 2.0),
        /** Tilled and rolled. */
        FIRMED(1.0, 0.8),
        /** Not touched since rain has settled it. */
        SETTLED(1.0, 0.6);

        private final double densityFactor;
        private final double roughnessCm;

        Tilth(double densityFactor, double roughnessCm) {
            this.densityFactor = densityFactor;
            this.roughnessCm = roughnessCm;
        }

        public double densityFactor() {
            return densityFactor;
        }

        /**
         * Water that the hollows hold before it runs off: Onstad 1984, {@code 0.112 RR + 0.031 RR^2
         * - 0.012 RR S} in cm, with random roughness RR in cm and slope S in percent; from memory.
         *
         * @param slopeFraction rise over run
         * @return storage, not below zero [mm]
         */
        public double hollowsMm(double slopeFraction) {
            double rr = roughnessCm;
            return Math.max(0, 10 * (0.112 * rr + 0.031 * rr * rr - 1.2 * rr * slopeFraction));
        }
    }

    /**
     * Plants that drink from the profile: grass, a failed crop, weeds.
     *
     * @param coverFraction share of the ground that green leaves shade, 0 to 1
     * @param rootDepthCm down to which roots reach [cm]
     * @param heightCm of the stand; the air stirs more over a tall one [cm]
     * @param depletionFraction share of the root zone's available water that is gone before the
     *     plants feel it, FAO-56 table 22
     */
    public record Vegetation(
            double coverFraction, double rootDepthCm, double heightCm, double depletionFraction) {

        /** Turf in FAO-56 table 22; lower than the crops there, so weeds are taken as turf. */
        private static final double TURF_DEPLETION = 0.4;

        public static final Vegetation NONE = new Vegetation(0, 0, 0, TURF_DEPLETION);

        /**
         * Clipped grass: cover between the 0.85 of low vegetation in TESSEL and the full shade of
         * the FAO-56 reference; roots to 1 m, FAO-56 table 22 for turf.
         */
        public static final Vegetation SHORT_GRASS = new Vegetation(0.9, 100);

        public Vegetation {
            Require.inRange("coverFraction", coverFraction, 0, 1);
            Require.inRange("rootDepthCm", rootDepthCm, 0, 200);
            Require.inRange("heightCm", heightCm, 0, 300);
            Require.inRange("depletionFraction", depletionFraction, 0, 0.9);
        }

        /** Basal crop coefficient under full cover, FAO-56 eq. 99: {@code 1.0 + 0.1 h}, to 1.2. */
        public double basalCoefficient() {
            return Math.min(1.2, 1 + 0.1 * heightCm / 100);
        }

        /** A low stand, as tall as clipped grass and as thirsty. */
        public Vegetation(double coverFraction, double rootDepthCm) {
            this(coverFraction, rootDepthCm, 12, TURF_DEPLETION);
        }
    }
}
