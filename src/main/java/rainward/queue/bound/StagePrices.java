package rainward.queue.bound;

import java.util.Arrays;
import java.util.List;

/**
 * Prices that hold machines together: a stage is done once, and by every hour the stage after it is
 * begun no more often than it is done.
 */
final class StagePrices {

    /** Share of the last direction that is kept; chosen by experiment. */
    private static final double DEFLECTION = 0.9;

    /** Prices of hours add up over many hours: they move by shorter steps; by experiment. */
    private static final double AFTER = 0.005;

    private final int hours;
    private final double[] once;
    private final double[][] after;
    private final double[][] toEnd;
    private final double[] onceUse;
    private final double[][] afterUse;
    private final double[] onceWay;
    private final double[][] afterWay;

    StagePrices(List<BoundedStage> stages, int hours) {
        this.hours = hours;
        once = new double[stages.size()];
        onceUse = new double[stages.size()];
        onceWay = new double[stages.size()];
        after = new double[stages.size()][hours];
        afterUse = new double[stages.size()][hours];
        afterWay = new double[stages.size()][hours];
        toEnd = new double[stages.size()][hours];
    }

    /** What starting a stage in an hour costs. */
    double start(BoundedStage stage, int hour) {
        double paid = once[stage.index()];
        return stage.first() ? paid : paid + toEnd[stage.index() - 1][hour];
    }

    /** What having done it so that the next may start in an hour brings. */
    double done(BoundedStage stage, int hour) {
        return stage.last() ? 0 : toEnd[stage.index()][hour];
    }

    /** What is earned by what is allowed: each stage once. */
    double allowed() {
        return Arrays.stream(once).sum();
    }

    void clearUse() {
        Arrays.fill(onceUse, -1);
        for (double[] use : afterUse) {
            Arrays.fill(use, 0);
        }
    }

    void use(BoundedStage stage, int startHour, int doneHour) {
        onceUse[stage.index()]++;
        if (!stage.first()) {
            add(afterUse[stage.index() - 1], startHour, 1);
        }
        if (!stage.last()) {
            add(afterUse[stage.index()], doneHour, -1);
        }
    }

    private static void add(double[] use, int from, double what) {
        for (int h = from; h < use.length; h++) {
            use[h] += what;
        }
    }

    /** Moves the prices along the uses, deflected by those before, as far as is asked. */
    void move(double reach) {
        double norm = turn();
        double step = norm > 0 ? reach / norm : 0;
        for (int s = 0; s < once.length; s++) {
            once[s] = Math.max(0, once[s] + step * onceWay[s]);
            double sum = 0;
            for (int h = hours - 1; h >= 0; h--) {
                after[s][h] = Math.max(0, after[s][h] + AFTER * step * afterWay[s][h]);
                sum += after[s][h];
                toEnd[s][h] = sum;
            }
        }
    }

    /** Finds the new direction and gives the square of its length. */
    private double turn() {
        double norm = 0;
        for (int s = 0; s < once.length; s++) {
            onceWay[s] = DEFLECTION * onceWay[s] + onceUse[s];
            norm += onceWay[s] * onceWay[s];
            for (int h = 0; h < hours; h++) {
                double way = DEFLECTION * afterWay[s][h] + afterUse[s][h];
                afterWay[s][h] = after[s][h] == 0 ? Math.max(0, way) : way;
                norm += AFTER * afterWay[s][h] * afterWay[s][h];
            }
        }
        return norm;
    }
}
