package rainward.queue.pace;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Set;
import java.util.SplittableRandom;
import rainward.farm.Require;

/**
 * Chance to be done by the date, by sampling days to come.
 *
 * @param finishChance share of samples in which all ground is done by the last day, 0 to 1
 * @param p10LeftHa one sample in ten leaves less undone [ha]
 * @param p50LeftHa the middle sample leaves this much undone [ha]
 * @param p90LeftHa one sample in ten leaves more undone [ha]
 * @param neededHaPerDay what each working day must bring, were all of them fit [ha/d]
 */
public record SeasonPace(
        double finishChance,
        double p10LeftHa,
        double p50LeftHa,
        double p90LeftHa,
        double neededHaPerDay) {

    private static final int SAMPLES = 2_000;

    /**
     * Where the season stands.
     *
     * @param today first day that counts
     * @param lastDay of sowing, inclusive
     * @param workDays days of the week that are worked
     * @param leftHa ground whose seed is still to go in [ha]
     */
    public record Standing(
            LocalDate today, LocalDate lastDay, Set<DayOfWeek> workDays, double leftHa) {

        public Standing {
            workDays = Set.copyOf(workDays);
            Require.notNegative("leftHa", leftHa);
        }

        /** Days that may still be worked. */
        int days() {
            return (int) today.datesUntil(lastDay.isBefore(today) ? today : lastDay.plusDays(1))
                    .filter(d -> workDays.contains(d.getDayOfWeek()))
                    .count();
        }
    }

    /**
     * What a day brings.
     *
     * @param fitFraction share of working days on which the ground lets the crew in, 0 to 1
     * @param staysFraction chance that a day is as fit as the one before, beyond what the share
     *     alone gives: 0 independent days, towards 1 long spells
     * @param haPerDay seeded on a fit day, in the mean [ha/d]
     * @param spreadFraction standard deviation of that, as a share of it
     */
    public record Days(
            double fitFraction, double staysFraction, double haPerDay, double spreadFraction) {

        public Days {
            Require.inRange("fitFraction", fitFraction, 0, 1);
            Require.inRange("staysFraction", staysFraction, 0, 0.99);
            Require.notNegative("haPerDay", haPerDay);
            Require.inRange("spreadFraction", spreadFraction, 0, 2);
        }
    }

    /**
     * Samples the rest of the season: fit and unfit days follow each other as a two-state Markov
     * chain with the given share and persistence; a fit day brings its mean with a normal spread,
     * not below zero.
     *
     * @param standing where the season stands
     * @param days what a day brings
     * @param seed of the random numbers; equal seeds give equal chances
     * @return chance to finish and what is left
     */
    public static SeasonPace of(Standing standing, Days days, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int count = standing.days();
        double[] left = new double[SAMPLES];
        int finished = 0;
        for (int s = 0; s < SAMPLES; s++) {
            left[s] = Math.max(0, standing.leftHa() - season(count, days, random));
            finished += left[s] <= 1e-9 ? 1 : 0;
        }
        java.util.Arrays.sort(left);
        return new SeasonPace(
                (double) finished / SAMPLES,
                left[SAMPLES / 10],
                left[SAMPLES / 2],
                left[SAMPLES * 9 / 10],
                count == 0 ? standing.leftHa() : standing.leftHa() / count);
    }

    private static double season(int count, Days days, SplittableRandom random) {
        double sum = 0;
        boolean fit = random.nextDouble() < days.fitFraction();
        for (int d = 0; d < count; d++) {
            if (fit) {
                double spread = 1 + days.spreadFraction() * random.nextGaussian();
                sum += Math.max(0, days.haPerDay() * spread);
            }
            boolean redrawn = random.nextDouble() >= days.staysFraction();
            fit = redrawn ? random.nextDouble() < days.fitFraction() : fit;
        }
        return sum;
    }
}
