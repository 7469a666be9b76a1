package rainward.replay.score;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.replay.crew.Policy;

/**
 * Policies side by side, means over seasons, paired: every season counts for every policy.
 *
 * @param seasons how many
 * @param policies one line each, by the stand model
 * @param gapClosed share of the way from a habit to the ceiling, by the stand model
 * @param byPlainRule the same judged by the plain rule
 */
public record Comparison(
        int seasons, List<Line> policies, GapClosed gapClosed, PlainRule byPlainRule) {

    private static final List<Policy> HABITS = List.of(
            Policy.AS_LISTED,
            Policy.NEAREST_NEXT,
            Policy.LARGEST_FIRST,
            Policy.READIEST_FIRST,
            Policy.RAIN_SOONEST);

    public Comparison {
        policies = List.copyOf(policies);
    }

    /**
     * One policy; acres and worth are means over seasons.
     *
     * @param name of the policy
     * @param acresEstablished with a stand
     * @param worth acres x priority x worth
     * @param worthCi95 of the mean, low and high
     * @param overListed worth above the listed order, paired by season
     * @param falseStarts fields a season
     * @param washedOut fields a season
     * @param km on the road a season
     * @param orderChanges a season
     * @param idleDays a season
     * @param acresSeeded that seed went into
     */
    public record Line(
            String name,
            double acresEstablished,
            double worth,
            double[] worthCi95,
            Interval overListed,
            double falseStarts,
            double washedOut,
            double km,
            double orderChanges,
            double idleDays,
            double acresSeeded) {}

    /**
     * Share of the gap to the ceiling that a policy closes, 1 where it reaches the ceiling.
     *
     * @param vsAsListed Rainward, from the listed order on
     * @param vsBestHabit Rainward, from the best simple policy on
     * @param byTenDays whoever is told ten days ahead, from the best simple policy on
     * @param bestHabit its name
     * @param ceiling the better of the two that know the weather to come
     */
    public record GapClosed(
            double vsAsListed,
            double vsBestHabit,
            double byTenDays,
            String bestHabit,
            String ceiling) {}

    /** Judged by the plain rule, which shares nothing with the stand model. */
    public record PlainRule(List<Line> policies, GapClosed gapClosed) {

        public PlainRule {
            policies = List.copyOf(policies);
        }
    }

    /** Compares all policies that every season was run by. */
    public static Comparison of(List<SeasonResult> seasons) {
        List<Line> model = lines(seasons, SeasonScore::model);
        List<Line> plain = lines(seasons, SeasonScore::plain);
        return new Comparison(seasons.size(), model, gap(model), new PlainRule(plain, gap(plain)));
    }

    private static List<Line> lines(
            List<SeasonResult> seasons, Function<SeasonScore, SeasonScore.Sums> judged) {
        return Arrays.stream(Policy.values())
                .filter(policy -> seasons.stream().allMatch(s -> s.by(policy).isPresent()))
                .map(policy -> line(seasons, policy, judged))
                .toList();
    }

    private static Line line(
            List<SeasonResult> seasons,
            Policy policy,
            Function<SeasonScore, SeasonScore.Sums> judged) {
        ToDoubleFunction<SeasonScore> worth = s -> acres(judged.apply(s).worthHa());
        double[] own = each(seasons, policy, worth);
        double[] listed = each(seasons, Policy.AS_LISTED, worth);
        double[] over = new double[own.length];
        Arrays.setAll(over, i -> own[i] - listed[i]);
        Interval interval = Interval.of(own);
        return new Line(
                policy.words(),
                mean(seasons, policy, s -> acres(judged.apply(s).establishedHa())),
                interval.mean(),
                new double[] {interval.low(), interval.high()},
                Interval.of(over),
                mean(seasons, policy, s -> judged.apply(s).falseStarts()),
                mean(seasons, policy, s -> judged.apply(s).washedOut()),
                mean(seasons, policy, s -> s.effort().roadKm()),
                mean(seasons, policy, s -> s.effort().changes()),
                mean(seasons, policy, s -> s.effort().idleDays()),
                mean(seasons, policy, s -> acres(s.effort().seededHa())));
    }

    private static double[] each(
            List<SeasonResult> seasons, Policy policy, ToDoubleFunction<SeasonScore> figure) {
        return seasons.stream()
                .map(s -> s.by(policy).orElseThrow())
                .mapToDouble(figure)
                .toArray();
    }

    private static double mean(
            List<SeasonResult> seasons, Policy policy, ToDoubleFunction<SeasonScore> figure) {
        return Arrays.stream(each(seasons, policy, figure)).average().orElseThrow();
    }

    private static double acres(double areaHa) {
        return UnitSystem.US_CUSTOMARY.shown(Quantity.AREA, areaHa);
    }

    private static GapClosed gap(List<Line> lines) {
        Line habit = best(lines, HABITS);
        Line ceiling = best(lines, List.of(Policy.TOLD_THE_FUTURE, Policy.TOLD_THE_SEASON));
        Line listed = best(lines, List.of(Policy.AS_LISTED));
        return new GapClosed(
                closed(lines, Policy.RAINWARD, listed, ceiling),
                closed(lines, Policy.RAINWARD, habit, ceiling),
                closed(lines, Policy.TOLD_THE_FUTURE, habit, ceiling),
                habit.name(),
                ceiling.name());
    }

    private static double closed(List<Line> lines, Policy policy, Line from, Line ceiling) {
        double gap = ceiling.worth() - from.worth();
        return lines.stream()
                .filter(line -> line.name().equals(policy.words()))
                .findFirst()
                .map(line -> gap <= 0 ? Double.NaN : (line.worth() - from.worth()) / gap)
                .orElse(Double.NaN);
    }

    private static Line best(List<Line> lines, List<Policy> among) {
        List<String> names = among.stream().map(Policy::words).toList();
        Optional<Line> best = lines.stream()
                .filter(line -> names.contains(line.name()))
                .max(Comparator.comparingDouble(Line::worth));
        return best.orElseThrow(() -> new IllegalArgumentException("none was run of " + names));
    }
}
