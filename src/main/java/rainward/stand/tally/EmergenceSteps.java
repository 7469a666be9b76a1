package rainward.stand.tally;

/** Counts of traces by seeding step and steps to emergence: quantiles without sorting. */
public final class EmergenceSteps {
    private final int[][] counts;
    private final int[] totals;

    public EmergenceSteps(int seedingSteps, int greatest) {
        counts = new int[seedingSteps][greatest + 1];
        totals = new int[seedingSteps];
    }

    public void add(int seedingStep, int steps) {
        counts[seedingStep][steps]++;
        totals[seedingStep]++;
    }

    /** Least number of steps in which at least that share of the traces is up. */
    public int quantile(int seedingStep, double share) {
        int left = (int) Math.ceil(share * totals[seedingStep]);
        int steps = 0;
        while (left > counts[seedingStep][steps]) {
            left -= counts[seedingStep][steps];
            steps++;
        }
        return steps;
    }
}
