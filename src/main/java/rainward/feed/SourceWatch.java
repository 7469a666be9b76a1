package rainward.feed;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.PullOutcome;
import rainward.weather.source.PullOutcome.Failed;
import rainward.weather.source.PullOutcome.Kind;
import rainward.weather.source.SourceStatus;
import rainward.weather.source.SourceStatus.State;

/**
 * How each source does and since when. Of several places asked in one round the worst counts; a
 * place that a source does not cover says nothing about the source.
 */
public final class SourceWatch {

    private static final Duration LATE = Duration.ofHours(12);
    private static final Duration STALE = Duration.ofHours(24);

    private final Map<String, Seen> seen = new TreeMap<>();

    /** The state now, the round it was seen in, and the state before that round. */
    private record Seen(SourceStatus status, Instant round, Optional<SourceStatus> before) {}

    /** Takes up states known from before a restart. */
    public synchronized void resume(List<SourceStatus> known) {
        known.forEach(s -> seen.put(s.source(), new Seen(s, Instant.MIN, Optional.of(s))));
    }

    /** All sources that were asked, by name. */
    public synchronized List<SourceStatus> all() {
        return seen.values().stream().map(Seen::status).toList();
    }

    /** The state of a source, if it was ever asked. */
    public synchronized Optional<SourceStatus> of(String source) {
        return Optional.ofNullable(seen.get(source)).map(Seen::status);
    }

    synchronized void saw(String source, PullOutcome outcome, Instant round) {
        Optional<Seen> last = Optional.ofNullable(seen.get(source));
        state(outcome, round, last)
                .ifPresent(state -> saw(source, state, words(source, outcome), round));
    }

    /**
     * Notes how a service did.
     *
     * @param source short name of the service
     * @param state how it did
     * @param words one sentence for the user
     * @param round moment of the round; of its answers the worst counts
     */
    public synchronized void saw(String source, State state, String words, Instant round) {
        Optional<Seen> last = Optional.ofNullable(seen.get(source));
        boolean sameRound = last.isPresent() && last.get().round().equals(round);
        if (sameRound && last.get().status().state().compareTo(state) >= 0) {
            return;
        }
        Optional<SourceStatus> before = sameRound ? last.get().before() : last.map(Seen::status);
        Instant since =
                before.filter(b -> b.state() == state).map(SourceStatus::since).orElse(round);
        seen.put(source, new Seen(new SourceStatus(source, state, since, words), round, before));
    }

    private static Optional<State> state(PullOutcome outcome, Instant round, Optional<Seen> last) {
        if (outcome instanceof Failed failed) {
            return ofFailure(failed.kind(), last);
        }
        return outcome.series().map(series -> ofAge(series, round));
    }

    static State ofAge(ForecastSeries series, Instant asOf) {
        Duration age = Duration.between(series.stamp().issuedAt(), asOf);
        if (age.compareTo(STALE) > 0) {
            return State.STALE;
        }
        return age.compareTo(LATE) > 0 ? State.LATE : State.OK;
    }

    private static Optional<State> ofFailure(Kind kind, Optional<Seen> last) {
        return switch (kind) {
            case NOT_SERVED -> Optional.empty();
            case BLOCKED -> Optional.of(State.BLOCKED);
            case DISABLED -> Optional.of(State.DISABLED);
            case STALE -> Optional.of(State.STALE);
            case PAUSED ->
                last.map(l -> l.status().state())
                        .filter(s -> s == State.BLOCKED)
                        .or(() -> Optional.of(State.DOWN));
            default -> Optional.of(State.DOWN);
        };
    }

    private static String words(String source, PullOutcome outcome) {
        if (outcome instanceof Failed failed) {
            return failed.words();
        }
        return source
                + outcome.series()
                        .map(s -> " issued its forecast at " + s.stamp().issuedAt())
                        .orElse("");
    }
}
