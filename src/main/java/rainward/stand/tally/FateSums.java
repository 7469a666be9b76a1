package rainward.stand.tally;

/**
 * What becomes of the classes of one kind of seed on one trace, added up by seeding step: numbers
 * of classes, but where it says otherwise. One array for each fate, so that sums over them
 * vectorise.
 */
public final class FateSums {

    final int classes;

    /** Come up, but for what rain takes; counted from the start of the trace. */
    public final double[] plants;

    /** The same times the worth of their emergence. */
    public final double[] plantWorth;

    /** The same times the step of their emergence. */
    public final double[] plantStep;

    public final double[] scorched;
    public final double[] dead;
    public final double[] underWay;

    /** Wait in dry soil at the end. */
    public final double[] waiting;

    /** One over the share that rain has left of what lay there when the trace began. */
    private final double[] sinceSown;

    /** Share of the seed that rain leaves from seeding to the end. */
    private final double[] leftAtEnd;

    public FateSums(int classes, int seedingSteps) {
        this.classes = classes;
        plants = new double[seedingSteps];
        plantWorth = new double[seedingSteps];
        plantStep = new double[seedingSteps];
        scorched = new double[seedingSteps];
        dead = new double[seedingSteps];
        underWay = new double[seedingSteps];
        waiting = new double[seedingSteps];
        sinceSown = new double[seedingSteps];
        leftAtEnd = new double[seedingSteps];
    }

    /**
     * Takes in what rain does.
     *
     * @param left share of seed left from the start of the trace up to each step
     * @param firstStep the first seeding step
     */
    public void rain(double[] left, int firstStep) {
        double end = left[left.length - 1];
        for (int s = 0; s < sinceSown.length; s++) {
            double since = 1 / left[firstStep + s];
            sinceSown[s] = since;
            leftAtEnd[s] = end * since;
        }
    }

    /** Adds what came up, each class for so much. */
    void addPlants(double[] of, double share, double[] to) {
        for (int s = 0; s < to.length; s++) {
            to[s] += share * sinceSown[s] * of[s];
        }
    }

    /** Adds what is left at the end, each class for so much. */
    void addLeft(double[] of, double share, double[] to) {
        for (int s = 0; s < to.length; s++) {
            to[s] += share * leftAtEnd[s] * of[s];
        }
    }

    static void add(double[] of, double share, double[] to) {
        for (int s = 0; s < to.length; s++) {
            to[s] += share * of[s];
        }
    }

    /** Adds what rain took: all that is not accounted for. */
    void addWashed(double share, double[] to) {
        for (int s = 0; s < to.length; s++) {
            double left = (underWay[s] + waiting[s]) * leftAtEnd[s] + sinceSown[s] * plants[s];
            to[s] += share * (classes - (dead[s] + scorched[s]) - left);
        }
    }
}
