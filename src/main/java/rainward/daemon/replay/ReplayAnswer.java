package rainward.daemon.replay;

import java.util.List;
import rainward.replay.Gains;
import rainward.replay.crew.Policy;
import rainward.replay.score.Comparison;
import rainward.replay.score.Losses;
import rainward.replay.score.Reliability;
import rainward.replay.score.SeasonResult;

/**
 * What a run of seasons came to; printed as JSON.
 *
 * @param invented true where the weather is
 * @param gapClosed share of the way to those who know the weather to come
 * @param trials what each change gains, where it was tried
 */
record ReplayAnswer(
        int seasons,
        boolean invented,
        List<Comparison.Line> policies,
        Comparison.GapClosed gapClosed,
        Comparison.PlainRule byPlainRule,
        List<Reliability.Step> reliability,
        List<Losses.Line> lossesToListed,
        List<Gains.Line> trials) {

    static ReplayAnswer of(List<Gains.Tried> tried, boolean invented) {
        List<SeasonResult> results = tried.stream().map(Gains.Tried::asItIs).toList();
        Comparison comparison = Comparison.of(results);
        return new ReplayAnswer(
                comparison.seasons(),
                invented,
                comparison.policies(),
                comparison.gapClosed(),
                comparison.byPlainRule(),
                Reliability.of(results, Policy.RAINWARD),
                Losses.of(results, Policy.RAINWARD, Policy.AS_LISTED),
                Gains.of(tried));
    }
}
