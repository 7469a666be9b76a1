package rainward.weather.skill;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rainward.farm.Require;

/**
 * Brier's score of chances, split by Murphy 1973 over the distinct chances that were forecast:
 * {@code score = reliability - resolution + uncertainty}, exactly.
 *
 * @param cases how many
 * @param brierScore mean of {@code (p - o)^2}; 0 is best
 * @param reliabilityScore how far chances lie from how often it rained; 0 is best
 * @param resolutionScore how far cases of different chances differ; more is better
 * @param uncertaintyScore {@code o (1 - o)} of the mean outcome: the score of its own climatology
 */
public record BrierScore(
        int cases,
        double brierScore,
        double reliabilityScore,
        double resolutionScore,
        double uncertaintyScore) {

    /** Score of some cases; at least one. */
    public static BrierScore of(List<ForecastCase> cases) {
        Require.that(!cases.isEmpty(), "a score needs at least one case");
        double base = meanOutcome(cases);
        Map<Double, List<ForecastCase>> byChance = cases.stream()
                .collect(Collectors.groupingBy(
                        ForecastCase::probability, TreeMap::new, Collectors.toList()));
        double reliability = 0;
        double resolution = 0;
        for (Map.Entry<Double, List<ForecastCase>> group : byChance.entrySet()) {
            double seen = meanOutcome(group.getValue());
            double share = group.getValue().size() / (double) cases.size();
            reliability += share * square(group.getKey() - seen);
            resolution += share * square(seen - base);
        }
        return new BrierScore(
                cases.size(), against(cases), reliability, resolution, base * (1 - base));
    }

    private static double against(List<ForecastCase> cases) {
        return cases.stream()
                .mapToDouble(c -> square(c.probability() - c.outcome()))
                .average()
                .orElseThrow();
    }

    private static double meanOutcome(List<ForecastCase> cases) {
        return cases.stream().mapToDouble(ForecastCase::outcome).average().orElseThrow();
    }

    private static double square(double value) {
        return value * value;
    }

    /** Skill against the sample's own climatology, 1 best, 0 no better; 0 where it never varied. */
    public double skill() {
        return skillAgainst(uncertaintyScore);
    }

    /**
     * Skill against another way to forecast the same cases, for instance the month's usual chance.
     *
     * @param otherBrierScore its Brier score, 0 or more
     * @return 1 best, 0 no better; 0 where the other was never wrong
     */
    public double skillAgainst(double otherBrierScore) {
        return otherBrierScore > 0 ? 1 - brierScore / otherBrierScore : 0;
    }
}
