package rainward.weather.source;

import java.util.List;

/**
 * One attempt to get a forecast, and all that came over the wire in it.
 *
 * @param outcome what it gave
 * @param answers as received, in order; empty where no request was made
 */
public record Pull(PullOutcome outcome, List<RawPull> answers) {

    public Pull {
        answers = List.copyOf(answers);
    }
}
