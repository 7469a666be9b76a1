package rainward.stand.bed;

import java.util.Arrays;
import rainward.soil.SoilRun;
import rainward.stand.StandCase;

/**
 * Means of each step over its hours, step by step with the traces side by side, so that the sums
 * vectorise; columns of single traces are copied out of them.
 */
final class StepMeans {

    /** Soil drier than that is as dry as can be: no seed starts in it [MPa]. */
    private static final double DRIEST_MPA = -3;

    final double[][] potentialMpa;
    final double[][] tempC;
    final double[][] surfaceTempC;
    final double[][] dryFrontCm;

    /** Greatest temperature of the surface, by trace. */
    final double[] hottestC;

    /** How far the drying front gets, by trace. */
    final double[] deepestDryCm;

    private final StepGrid grid;
    private final int traces;

    StepMeans(StandCase question, StepGrid grid) {
        this.grid = grid;
        this.traces = question.soil().traces();
        SoilRun soil = question.soil();
        tempC = means(soil.seedZone().tempC(), Double.NEGATIVE_INFINITY);
        surfaceTempC = means(soil.seedZone().surfaceTempC(), Double.NEGATIVE_INFINITY);
        dryFrontCm = means(soil.surface().dryFrontCm(), Double.NEGATIVE_INFINITY);
        potentialMpa = means(soil.seedZone().potentialMpa(), DRIEST_MPA);
        hottestC = greatest(surfaceTempC, Double.NEGATIVE_INFINITY);
        deepestDryCm = greatest(dryFrontCm, 0);
    }

    /** Means over steps, no hour counting as less than a floor. */
    private double[][] means(double[][] hours, double floor) {
        double share = 1.0 / grid.stepHours();
        double[][] steps = new double[grid.steps()][traces];
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

    private double[] greatest(double[][] steps, double least) {
        double[] most = new double[traces];
        Arrays.fill(most, least);
        for (double[] step : steps) {
            for (int i = 0; i < most.length; i++) {
                most[i] = Math.max(most[i], step[i]);
            }
        }
        return most;
    }

    /** Copies what one trace does out of the rows. */
    static void copy(double[][] steps, int trace, double[] column) {
        for (int step = 0; step < column.length; step++) {
            column[step] = steps[step][trace];
        }
    }
}
