package rainward.feed;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rainward.farm.GeoPoint;
import rainward.farm.Require;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.ForecastSource;
import rainward.weather.source.Pull;
import rainward.weather.source.PullOutcome;
import rainward.weather.source.PullOutcome.Failed;
import rainward.weather.source.PullOutcome.Fetched;
import rainward.weather.source.PullOutcome.Unchanged;
import rainward.weather.source.RawPull;

/**
 * Sources in order of preference, of one property. Each pull begins with the preferred one, so that
 * it comes back as soon as it answers; a source that fails, is a day old or knows no rain is passed
 * over while another does better. With none left the newest forecast kept is the answer.
 */
public final class SourceChain implements ForecastSource {

    private static final Duration FRESH = Duration.ofHours(24);

    private final List<ForecastSource> order;
    private final SourceWatch watch;

    /**
     * Puts sources in order.
     *
     * @param order the preferred one first; not empty
     * @param watch where it is noted how they do; shared by the chains of all properties
     */
    public SourceChain(List<ForecastSource> order, SourceWatch watch) {
        this.order = List.copyOf(order);
        this.watch = watch;
        Require.that(!order.isEmpty(), "a chain of sources needs at least one");
    }

    @Override
    public String name() {
        return order.stream().map(ForecastSource::name).collect(Collectors.joining(", "));
    }

    @Override
    public Pull pull(GeoPoint point, Instant asOf) {
        List<RawPull> answers = new ArrayList<>();
        List<PullOutcome> tried = new ArrayList<>();
        for (ForecastSource source : order) {
            Pull pull = source.pull(point, asOf);
            answers.addAll(pull.answers());
            watch.saw(source.name(), pull.outcome(), asOf);
            if (good(pull.outcome(), asOf)) {
                return new Pull(told(pull.outcome(), words(tried)), answers);
            }
            tried.add(pull.outcome());
        }
        return new Pull(best(tried), answers);
    }

    private static boolean good(PullOutcome outcome, Instant asOf) {
        return !(outcome instanceof Failed)
                && outcome.series().filter(s -> fresh(s, asOf) && knowsRain(s)).isPresent();
    }

    private static boolean fresh(ForecastSeries series, Instant asOf) {
        return !series.stamp().issuedAt().isBefore(asOf.minus(FRESH));
    }

    private static boolean knowsRain(ForecastSeries series) {
        return !series.rain().amounts().isEmpty()
                || !series.rain().probabilities().isEmpty();
    }

    /** None was good: an answer that knows rain before one that does not, the newest first. */
    private static PullOutcome best(List<PullOutcome> tried) {
        Optional<PullOutcome> answer = tried.stream()
                .filter(o -> !(o instanceof Failed))
                .max(Comparator.comparing(o -> rank(o.series().orElseThrow())));
        Optional<ForecastSeries> kept = tried.stream()
                .flatMap(o -> o.series().stream())
                .max(Comparator.comparing(SourceChain::rank));
        if (answer.isPresent() && answer.get().series().equals(kept)) {
            return told(answer.get(), words(tried));
        }
        return failed(tried, kept);
    }

    private static PullOutcome failed(List<PullOutcome> tried, Optional<ForecastSeries> kept) {
        List<Failed> failures = tried.stream()
                .filter(Failed.class::isInstance)
                .map(Failed.class::cast)
                .toList();
        Optional<Instant> retryAt =
                failures.stream().flatMap(f -> f.retryAt().stream()).min(Comparator.naturalOrder());
        return new Failed(failures.get(0).kind(), String.join("; ", words(tried)), retryAt, kept);
    }

    /** Knows rain, then time of issue. */
    private record Rank(boolean rain, Instant issuedAt) implements Comparable<Rank> {

        @Override
        public int compareTo(Rank other) {
            int byRain = Boolean.compare(rain, other.rain);
            return byRain != 0 ? byRain : issuedAt.compareTo(other.issuedAt);
        }
    }

    private static Rank rank(ForecastSeries series) {
        return new Rank(knowsRain(series), series.stamp().issuedAt());
    }

    private static List<String> words(List<PullOutcome> tried) {
        return tried.stream()
                .map(o -> o instanceof Failed f ? f.words() : passedOver(o))
                .toList();
    }

    private static String passedOver(PullOutcome outcome) {
        ForecastSeries series = outcome.series().orElseThrow();
        return series.stamp().source()
                + (knowsRain(series)
                        ? " has only an old forecast, issued at "
                                + series.stamp().issuedAt()
                        : " has no readable rain");
    }

    /** The outcome, with what went wrong before it among its warnings. */
    private static PullOutcome told(PullOutcome outcome, List<String> before) {
        if (outcome instanceof Fetched fetched) {
            return new Fetched(told(fetched.forecast(), before));
        }
        if (outcome instanceof Unchanged same) {
            return new Unchanged(told(same.forecast(), before), same.confirmedAt());
        }
        return outcome;
    }

    private static ForecastSeries told(ForecastSeries series, List<String> before) {
        List<String> warnings = new ArrayList<>(before);
        warnings.addAll(series.warnings());
        return new ForecastSeries(
                series.stamp(), series.point(), series.hourly(), series.rain(), warnings);
    }
}
