package rainward.weather.trace;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.weather.source.EnsembleRain;
import rainward.weather.source.WeightedEnsemble;

/**
 * What the rain of traces rests on beside the official forecast.
 *
 * @param members of ensembles that were used; empty where none was there in time
 * @param warnings what was made up or left out, in words for the user
 */
public record TraceBasis(List<MemberUse> members, List<String> warnings) {

    /** The official forecast alone. */
    public static final TraceBasis PLAIN = new TraceBasis(List.of(), List.of());

    public TraceBasis {
        members = List.copyOf(members);
        warnings = List.copyOf(warnings);
    }

    /** Use of members first, then the warnings, in words for the user. */
    public List<String> words() {
        return Stream.concat(members.stream().flatMap(m -> m.words().stream()), warnings.stream())
                .toList();
    }

    /**
     * One ensemble.
     *
     * @param source short name of the service
     * @param issuedAt by it
     * @param members how many
     * @param traceShare share of traces that are its members, 0 to 1
     * @param periods of rain that are drawn from members
     * @param ofPeriods of rain in all
     */
    public record MemberUse(
            String source,
            Instant issuedAt,
            int members,
            double traceShare,
            int periods,
            int ofPeriods) {

        static MemberUse of(WeightedEnsemble used, double traceShare, int periods, int ofPeriods) {
            EnsembleRain rain = used.rain();
            return new MemberUse(
                    rain.stamp().source(),
                    rain.stamp().issuedAt(),
                    rain.members(),
                    traceShare,
                    periods,
                    ofPeriods);
        }

        /** One sentence; empty where its members reach no period. */
        Optional<String> words() {
            return periods == 0
                    ? Optional.empty()
                    : Optional.of("rain follows the " + members + " members of " + source + " of "
                            + issuedAt.truncatedTo(ChronoUnit.MINUTES) + " in " + periods + " of "
                            + ofPeriods + " periods, moved to the official chance and amount");
        }
    }
}
