package rainward.input.check;

import rainward.farm.Mix;
import rainward.farm.Require;

/** What a count says of a field. */
public enum StandVerdict {
    UP,
    THIN,
    FAILED;

    /** Common practice, no source: three quarters of the target pass for a stand. */
    public static final double UP_SHARE = 0.75;

    /** Common practice, no source: below a third of the target the ground is sown again. */
    public static final double THIN_SHARE = 1.0 / 3;

    /** Why a stand is thin or failed. */
    public enum Cause {
        DRY,
        WASHED,
        CRUSTED,
        EATEN,
        WEEDS,
        SEED,
        OTHER
    }

    /**
     * Share of the mix's target that stands, 0 and more.
     *
     * @param stand as {@link SownSeed} gives it
     */
    public static double targetShare(Mix mix, double stand) {
        return Require.notNegative("stand", stand) / mix.standTargetFraction();
    }

    /** The verdict by the share of the target. */
    public static StandVerdict of(double targetShare) {
        Require.notNegative("targetShare", targetShare);
        if (targetShare >= UP_SHARE) {
            return UP;
        }
        return targetShare >= THIN_SHARE ? THIN : FAILED;
    }

    /**
     * True where one standard error up or down would change the verdict: more places should be
     * counted before a field is torn up.
     */
    public static boolean isClose(double targetShare, double errorShare) {
        Require.notNegative("errorShare", errorShare);
        return of(targetShare + errorShare) != of(Math.max(0, targetShare - errorShare));
    }
}
