package rainward.stand.bed;

import java.util.Arrays;
import java.util.function.Function;
import rainward.soil.SoilRun;
import rainward.stand.StandCase;

/**
 * Means of each step over its hours, step by step with the traces side by side, so that the sums
 * vectorise; columns of single traces are copied out of them.
 */
final class StepMeans {

    /** Soil drier than that is as dry as can be: no seed starts in it [MPa]. */
    private static final double DRIEST_MPA = -3;

    private static final double[][] NOTHING = {};
    private static final int[] NONE = {};

    final Rows potentialMpa;
    final Rows tempC;
    final Rows surfaceTempC;
    final Rows dryFrontCm;

    /** Greatest temperature of the surface, by trace. */
    final double[] hottestC;

    /** How far the drying front gets, by trace. */
    final double[] deepestDryCm;

    private final StepGrid grid;
    private final StandCase question;

    StepMeans(StandCase question, StepGrid grid) {
        this.grid = grid;
        this.question = question;
        tempC = rows(soil -> soil.seedZone().tempC(), Double.NEGATIVE_INFINITY);
        surfaceTempC = rows(soil -> soil.seedZone().surfaceTempC(), Double.NEGATIVE_INFINITY);
        dryFrontCm = rows(soil -> soil.surface().dryFrontCm(), Double.NEGATIVE_INFINITY);
        potentialMpa = rows(soil -> soil.seedZone().potentialMpa(), DRIEST_MPA);
        hottestC = greatest(surfaceTempC, Double.NEGATIVE_INFINITY);
        deepestDryCm = greatest(dryFrontCm, 0);
    }

    /** Means by step: on every trace, then on the courses that come after. */
    static final class Rows {

        private final double[][] ahead;
        private final double[][] later;
        private final int[] courseOf;

        /**
         * Rows of one quantity, in its own unit.
         *
         * @param ahead {@code [step][trace]}
         * @param later {@code [step][course]}
         * @param courseOf the course that each trace goes on with
         */
        Rows(double[][] ahead, double[][] later, int[] courseOf) {
            this.ahead = ahead;
            this.later = later;
            this.courseOf = courseOf;
        }

        /** Copies what one trace does out of the rows. */
        void copy(int trace, double[] column) {
            for (int step = 0; step < ahead.length; step++) {
                column[step] = ahead[step][trace];
            }
            if (later.length > 0) {
                int course = courseOf[trace];
                for (int step = 0; step < later.length; step++) {
                    column[ahead.length + step] = later[step][course];
                }
            }
        }
    }

    private Rows rows(Function<SoilRun, double[][]> of, double floor) {
        double[][] ahead = means(of.apply(question.soil()), floor);
        return question.later()
                .map(l -> new Rows(ahead, means(of.apply(l.soil()), floor), l.courseOf()))
                .orElse(new Rows(ahead, NOTHING, NONE));
    }

    /** Means over steps, no hour counting as less than a floor. */
    private double[][] means(double[][] hours, double floor) {
        double share = 1.0 / grid.stepHours();
        double[][] steps = new double[hours.length / grid.stepHours()][hours[0].length];
        for (int step = 0; step < steps.length; step++) {
            double[] sum = steps[step];
            for (int hour = grid.hour(step); hour < grid.hour(step + 1); hour++) {
                add(sum, hours[hour], floor);
            }
            for (int i = 0; i < sum.length; i++) {
                sum[i] *= share;
            }
        }
        return steps;
    }

    private static void add(double[] sum, double[] hour, double floor) {
        for (int i = 0; i < sum.length; i++) {
            sum[i] += Math.max(floor, hour[i]);
        }
    }

    private static double[] greatest(Rows rows, double least) {
        double[] most = greatest(rows.ahead, least);
        if (rows.later.length > 0) {
            double[] after = greatest(rows.later, least);
            for (int i = 0; i < most.length; i++) {
                most[i] = Math.max(most[i], after[rows.courseOf[i]]);
            }
        }
        return most;
    }

    private static double[] greatest(double[][] steps, double least) {
        double[] most = new double[steps[0].length];
        Arrays.fill(most, least);
        for (double[] step : steps) {
            for (int i = 0; i < most.length; i++) {
                most[i] = Math.max(most[i], step[i]);
            }
        }
        return most;
    }
}
