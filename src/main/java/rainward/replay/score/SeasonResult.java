package rainward.replay.score;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import rainward.replay.crew.Policy;

/**
 * One season by all policies, on the same truth, forecasts and luck.
 *
 * @param station whose weather it had
 * @param start first day
 * @param seed of forecasts and luck
 * @param scores one a policy
 */
public record SeasonResult(String station, LocalDate start, long seed, List<SeasonScore> scores) {

    public SeasonResult {
        scores = List.copyOf(scores);
    }

    /** What tells a season from others. */
    public String key() {
        return station + " " + start + " " + seed;
    }

    public Optional<SeasonScore> by(Policy policy) {
        return scores.stream().filter(s -> s.policy() == policy).findFirst();
    }
}
