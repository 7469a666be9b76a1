package rainward.replay;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.replay.score.Interval;
import rainward.replay.score.SeasonResult;
import rainward.replay.score.SeasonScore;

/** What each trial gains over things as they are, paired by season. */
public final class Gains {

    private Gains() {}

    /**
     * A season with its trials.
     *
     * @param asItIs by every policy
     * @param trials those that were run
     */
    public record Tried(SeasonResult asItIs, List<Outcome> trials) {

        public Tried {
            trials = List.copyOf(trials);
        }

        boolean has(Trial trial) {
            return asItIs.by(trial.against()).isPresent() && by(trial).isPresent();
        }

        Optional<SeasonScore> by(Trial trial) {
            return trial.isPolicy()
                    ? asItIs.by(trial.policy())
                    : trials.stream()
                            .filter(o -> o.trial() == trial)
                            .map(Outcome::score)
                            .findFirst();
        }
    }

    /** One trial of a season. */
    public record Outcome(Trial trial, SeasonScore score) {}

    /**
     * One trial over all seasons, each figure a mean a season.
     *
     * @param name of the trial
     * @param acres more with a stand
     * @param worth more, acres x priority x worth
     * @param byPlainRule worth more when judged by the plain rule
     */
    public record Line(String name, Interval acres, Interval worth, Interval byPlainRule) {}

    /** Trials that every season has, with what they are held against. */
    public static List<Line> of(List<Tried> seasons) {
        return Arrays.stream(Trial.values())
                .filter(trial -> !seasons.isEmpty() && seasons.stream().allMatch(s -> s.has(trial)))
                .map(trial -> new Line(
                        trial.words(),
                        gain(seasons, trial, s -> s.model().establishedHa()),
                        gain(seasons, trial, s -> s.model().worthHa()),
                        gain(seasons, trial, s -> s.plain().worthHa())))
                .toList();
    }

    private static Interval gain(
            List<Tried> seasons, Trial trial, ToDoubleFunction<SeasonScore> figureHa) {
        return Interval.of(seasons.stream()
                .mapToDouble(season -> gain(
                        season.asItIs().by(trial.against()).orElseThrow(),
                        season.by(trial).orElseThrow(),
                        figureHa))
                .toArray());
    }

    private static double gain(
            SeasonScore asItIs, SeasonScore tried, ToDoubleFunction<SeasonScore> figureHa) {
        return UnitSystem.US_CUSTOMARY.shown(
                Quantity.AREA, figureHa.applyAsDouble(tried) - figureHa.applyAsDouble(asItIs));
    }
}
