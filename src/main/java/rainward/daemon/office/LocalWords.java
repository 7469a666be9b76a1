package rainward.daemon.office;

import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rainward.farm.DayClock;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.Pull;
import rainward.weather.source.PullOutcome;
import rainward.weather.source.PullOutcome.Failed;
import rainward.weather.source.PullOutcome.Fetched;
import rainward.weather.source.PullOutcome.Unchanged;
import rainward.weather.source.SourceStatus;

/**
 * Words of the feeds as people on the farm read them. The feeds know no farm and name moments in
 * UTC; here each becomes a time of the farm's day.
 */
final class LocalWords {

    private static final Pattern MOMENT =
            Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d(:\\d\\d(\\.\\d+)?)?Z");

    private LocalWords() {}

    /** A sentence with its moments as the farm says them; what only looks like a moment stays. */
    static String in(DayClock clock, String sentence) {
        Matcher moments = MOMENT.matcher(sentence);
        return moments.replaceAll(found -> Matcher.quoteReplacement(local(clock, found.group())));
    }

    private static String local(DayClock clock, String moment) {
        try {
            return clock.dateTime(OffsetDateTime.parse(moment).toInstant());
        } catch (DateTimeParseException e) {
            return moment;
        }
    }

    /** A pull with its words so. */
    static Pull in(DayClock clock, Pull pull) {
        return new Pull(in(clock, pull.outcome()), pull.answers());
    }

    private static PullOutcome in(DayClock clock, PullOutcome outcome) {
        if (outcome instanceof Fetched fetched) {
            return new Fetched(in(clock, fetched.forecast()));
        }
        if (outcome instanceof Unchanged same) {
            return new Unchanged(in(clock, same.forecast()), same.confirmedAt());
        }
        Failed failed = (Failed) outcome;
        return new Failed(
                failed.kind(),
                in(clock, failed.words()),
                failed.retryAt(),
                failed.series().map(series -> in(clock, series)));
    }

    private static ForecastSeries in(DayClock clock, ForecastSeries series) {
        List<String> warnings =
                series.warnings().stream().map(words -> in(clock, words)).toList();
        return new ForecastSeries(
                series.stamp(), series.point(), series.hourly(), series.rain(), warnings);
    }

    /** How a source does and since when. */
    static String of(SourceStatus status, DayClock clock) {
        String state = switch (status.state()) {
            case OK -> "does well";
            case LATE -> "is late";
            case STALE -> "has only an old forecast";
            case DOWN -> "gives nothing";
            case BLOCKED -> "turns us away";
            case DISABLED -> "is switched off";
        };
        return status.source() + " " + state + " since " + clock.dateTime(status.since()) + ": "
                + in(clock, status.words());
    }
}
