package rainward.cycle;

/**
 * What waiting for a later hour may be trusted to bring. The planner takes the best of many hours,
 * and the best of many estimates is, on the average, one that came out too high. So a later hour
 * counts for less by what it may differ from the first one by chance alone: seed waits only for a
 * gain that stands out of the scatter of the courses drawn.
 */
final class SureGain {

    /**
     * The best of a week's fourteen half days is beyond so many standard errors by chance alone
     * once in twenty weeks (Bonferroni: one in twenty over 14, both sides).
     */
    private static final double STANDARD_ERRORS = 2.9;

    /**
     * Standard error of the difference between two hours a day apart, in those of one hour alone:
     * courses that fail one seeding mostly fail its neighbour, too. Measured over nine seasons with
     * eight seeds each: 0.18, 0.31, 0.49, 0.75 at 1, 2, 4, 6 days of lead.
     */
    private static final double PER_DAY = 0.14;

    /**
     * An hour never counts for less than this share of its worth; chosen, so that it stays open.
     */
    private static final double LEAST_SHARE = 0.5;

    private SureGain() {}

    /**
     * The worth of each hour less what chance may have added to it. That all courses succeed makes
     * nothing certain: their scatter is reckoned with one more that did and one that did not
     * (Laplace's rule of succession).
     *
     * @param worth by hour from the first one on, 0 to 1
     * @param courses of the weather that it is the mean of; a single one is taken for the truth
     * @return same length, 0 to 1
     */
    static double[] of(double[] worth, int courses) {
        double[] sure = worth.clone();
        for (int h = 0; h < sure.length && courses > 1; h++) {
            double apart = Math.min(1, PER_DAY * h / 24.0);
            double likely = (worth[h] * courses + 1) / (courses + 2);
            double scatter = Math.sqrt(likely * (1 - likely) / courses);
            sure[h] =
                    Math.max(LEAST_SHARE * worth[h], worth[h] - STANDARD_ERRORS * apart * scatter);
        }
        return sure;
    }
}
