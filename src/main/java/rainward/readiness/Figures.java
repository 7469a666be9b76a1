package rainward.readiness;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rainward.stand.StandOutlook;

/**
 * The numbers behind a readiness, all seen from the field's next possible hour.
 *
 * @param nextSeedAt that hour
 * @param rain ahead of it
 * @param seedbed that the seed would lie in
 * @param stand that would come of it
 * @param sensitivities what would change the answer most, the greatest first
 */
public record Figures(
        Instant nextSeedAt,
        Rain rain,
        Seedbed seedbed,
        Stand stand,
        List<Sensitivity> sensitivities) {

    public Figures {
        sensitivities = List.copyOf(sensitivities);
    }

    /**
     * A value over all traces.
     *
     * @param low one trace in ten is lower
     * @param middle half of the traces are lower
     * @param high one trace in ten is higher
     */
    public record Range(double low, double middle, double high) {

        /** The range of the first so many values. */
        static Range of(double[] values, int count) {
            double[] sorted = Arrays.copyOf(values, count);
            Arrays.sort(sorted);
            return new Range(
                    sorted[(int) (0.1 * (count - 1))],
                    sorted[count / 2],
                    sorted[(int) Math.ceil(0.9 * (count - 1))]);
        }
    }

    /**
     * Rain that would start the seed.
     *
     * @param chance of a useful rain within the look ahead, 0 to 1
     * @param hardChance of a hard burst within the look ahead, 0 to 1
     * @param first the first useful rain, over the traces that have one
     */
    public record Rain(double chance, double hardChance, Optional<FirstRain> first) {}

    /**
     * The first useful rain.
     *
     * @param earliest one trace in ten is earlier
     * @param middle half of the traces are earlier
     * @param latest one trace in ten is later
     * @param amountMm over a day from its arrival [mm]
     */
    public record FirstRain(Instant earliest, Instant middle, Instant latest, Range amountMm) {}

    /**
     * Where the seed would lie.
     *
     * @param depthCm sowing depth [cm]
     * @param waterFraction at that depth at the next possible hour [m3/m3]
     * @param meanTempC at that depth over two days from there [C]
     * @param hottestSurfaceC of the surface in those days, middle of the traces [C]
     * @param course of the water at that depth over all hours ahead
     */
    public record Seedbed(
            double depthCm,
            Range waterFraction,
            double meanTempC,
            double hottestSurfaceC,
            Course course) {}

    /**
     * A range that changes with time.
     *
     * @param start of the first step
     * @param step between two ranges
     * @param ranges in order of time
     */
    public record Course(Instant start, Duration step, List<Range> ranges) {

        public Course {
            ranges = List.copyOf(ranges);
        }

        public Instant timeOf(int index) {
            return start.plus(step.multipliedBy(index));
        }
    }

    /**
     * What would come up.
     *
     * @param outlook chance, worth, emergence and losses by seeding hour
     * @param nextHour the next possible hour in it
     * @param bestHour the hour of the greatest worth in it
     */
    public record Stand(StandOutlook outlook, int nextHour, int bestHour) {

        /** Expected worth when seeded at the next possible hour, 0 to 1. */
        public double worth() {
            return outlook.worth()[nextHour];
        }

        /** Expected worth when seeded at the best hour, 0 to 1. */
        public double bestWorth() {
            return outlook.worth()[bestHour];
        }

        public StandOutlook.EmergenceRange emergence() {
            return outlook.emergence().get(nextHour);
        }

        public StandOutlook.Losses losses() {
            return outlook.losses().get(nextHour);
        }
    }

    /**
     * What one factor costs: expected worth as things stand, and if this factor alone were perfect.
     *
     * @param factor that is made perfect
     * @param worth as things stand, 0 to 1
     * @param perfectWorth with the factor perfect, 0 to 1
     */
    public record Sensitivity(Factor factor, double worth, double perfectWorth) {

        /** Worth that the factor costs; below zero where the perfect state would hurt. */
        public double gain() {
            return perfectWorth - worth;
        }
    }

    /** What can be made perfect. */
    public enum Factor {
        /** A gentle soaking comes a day after seeding and the seedbed stays moist. */
        RAIN,
        /** The seedbed is moist when seed goes in and for three days. */
        MOISTURE,
        /** The soil is as warm as the species likes best, and the surface scorches nothing. */
        HEAT,
        /** A stand is worth as much however late it comes. */
        SEASON
    }
}
