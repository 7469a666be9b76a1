package rainward.weather.skill;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How good the chances of one class of lead times were.
 *
 * @param lead class of lead times
 * @param score of the chances as forecast
 * @param usualBrierScore of always saying the month's usual chance
 * @param skill against that, 1 best, 0 no better
 * @param reliability by tenths
 * @param recalibration what was learnt, and what it does
 */
public record LeadSkill(
        LeadClass lead,
        BrierScore score,
        double usualBrierScore,
        double skill,
        ReliabilityTable reliability,
        Lesson recalibration) {

    /** Earlier share of the cases from which the tried lesson is learnt. */
    private static final double EARLIER = 2 / 3.0;

    /**
     * What was learnt.
     *
     * @param leastCases that are needed before chances are moved
     * @param applied true where there are enough
     * @param effect of a lesson from the earlier two thirds of the cases on the rest; empty where
     *     there are not enough
     */
    public record Lesson(int leastCases, boolean applied, Optional<Effect> effect) {}

    /**
     * Scores of cases that the lesson had not seen.
     *
     * @param cases how many
     * @param beforeBrierScore of the chances as forecast
     * @param afterBrierScore of the chances as taught
     */
    public record Effect(int cases, double beforeBrierScore, double afterBrierScore) {}

    /** One entry a class that has cases. */
    public static List<LeadSkill> of(List<SeenChance> seen) {
        return Arrays.stream(LeadClass.values())
                .flatMap(lead -> of(lead, seen).stream())
                .toList();
    }

    private static Optional<LeadSkill> of(LeadClass lead, List<SeenChance> all) {
        List<SeenChance> seen = all.stream()
                .filter(c -> c.said().lead() == lead)
                .sorted(Comparator.comparing(c -> c.said().window().from()))
                .toList();
        if (seen.isEmpty()) {
            return Optional.empty();
        }
        List<ForecastCase> cases = SeenChance.forecasts(seen);
        BrierScore score = BrierScore.of(cases);
        double usual = BrierScore.of(SeenChance.usual(seen)).brierScore();
        int least = Recalibration.USUAL_LEAST_CASES;
        return Optional.of(new LeadSkill(
                lead,
                score,
                usual,
                score.skillAgainst(usual),
                ReliabilityTable.of(cases),
                new Lesson(
                        least,
                        cases.size() >= least,
                        cases.size() >= least ? Optional.of(effect(cases)) : Optional.empty())));
    }

    private static Effect effect(List<ForecastCase> cases) {
        int split = (int) (cases.size() * EARLIER);
        Recalibration earlier = Recalibration.of(cases.subList(0, split), 1);
        List<ForecastCase> rest = cases.subList(split, cases.size());
        List<ForecastCase> taught = rest.stream()
                .map(c -> new ForecastCase(
                        c.leadHours(), earlier.apply(c.probability(), c.leadHours()), c.wet()))
                .toList();
        return new Effect(
                rest.size(),
                BrierScore.of(rest).brierScore(),
                BrierScore.of(taught).brierScore());
    }
}
