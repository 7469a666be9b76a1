package rainward.cycle;

import java.time.LocalDate;
import rainward.farm.Season;
import rainward.stand.StandRules;

/**
 * What a field is worth that is left for a better day: a soaking rain comes sooner or later, is
 * seen coming, and makes the stand as often as the stand model says of such a rain.
 */
final class Patience {

    /** From the rain that makes it to the day a stand comes up; common practice, no source [d]. */
    private static final int UP_DAYS = 7;

    /** Nobody sees every rain coming, and not every field can be seeded ahead of it; chosen. */
    private static final double SEEN_AND_CAUGHT = 0.7;

    /** What is left to a seeding that waiting beats, so that the field is still made ready. */
    private static final double LEFT = 0.02;

    private final double dailyChance;
    private final double comesUp;

    Patience(StandRules.Beyond beyond) {
        this.dailyChance = -Math.expm1(-1 / beyond.soakingRainEveryDays());
        this.comesUp = beyond.comesUpFraction() * SEEN_AND_CAUGHT;
    }

    /**
     * Expected worth of waiting from a day on: sum over the days to come of the chance that the
     * first soaking rain falls on it, times what a stand up a week later is worth.
     *
     * @param season of the mix
     * @param day on which it is not sown
     * @return 0 to the mix's full worth
     */
    double worth(Season season, LocalDate day) {
        double none = 1;
        double sum = 0;
        for (LocalDate d = day.plusDays(1); season.allowsSowing(d); d = d.plusDays(1)) {
            sum += none * dailyChance * comesUp * season.worthOn(d.plusDays(UP_DAYS));
            none *= 1 - dailyChance;
        }
        return sum;
    }

    /** What seeding now gains over waiting; a little is left of it where waiting gains more. */
    double gain(double worth, double waiting) {
        return Math.max(worth - waiting, LEFT * worth);
    }
}
