package rainward.weather.source;

import java.util.List;
import java.util.Optional;

/**
 * One attempt to get the members of an ensemble, and all that came over the wire in it.
 *
 * @param rain of the members, the kept ones where no new ones came
 * @param answers as received, in order; empty where no request was made
 */
public record EnsemblePull(Optional<EnsembleRain> rain, List<RawPull> answers) {

    /** Nothing asked, nothing known. */
    public static final EnsemblePull NONE = new EnsemblePull(Optional.empty(), List.of());

    public EnsemblePull {
        answers = List.copyOf(answers);
    }
}
