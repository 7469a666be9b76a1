package rainward.daemon.office;

import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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

    private static final DateTimeFormatter WHEN =
            DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.US);

    private static final Pattern MOMENT =
            Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d(:\\d\\d(\\.\\d+)?)?Z");

    private LocalWords() {}

    /** A sentence with its moments in a zone; what only looks like a moment stays. */
    static String in(ZoneId zone, String sentence) {
        Matcher moments = MOMENT.matcher(sentence);
        return moments.replaceAll(found -> Matcher.quoteReplacement(local(zone, found.group())));
    }

    private static String local(ZoneId zone, String moment) {
        try {
            return WHEN.format(OffsetDateTime.parse(moment).atZoneSameInstant(zone));
        } catch (DateTimeParseException e) {
            return moment;
        }
    }

    /** A pull with its words in a zone. */
    static Pull in(ZoneId zone, Pull pull) {
        return new Pull(in(zone, pull.outcome()), pull.answers());
    }

    private static PullOutcome in(ZoneId zone, PullOutcome outcome) {
        if (outcome instanceof Fetched fetched) {
            return new Fetched(in(zone, fetched.forecast()));
        }
        if (outcome instanceof Unchanged same) {
            return new Unchanged(in(zone, same.forecast()), same.confirmedAt());
        }
        Failed failed = (Failed) outcome;
        return new Failed(
                failed.kind(),
                in(zone, failed.words()),
                failed.retryAt(),
                failed.series().map(series -> in(zone, series)));
    }

    private static ForecastSeries in(ZoneId zone, ForecastSeries series) {
        List<String> warnings =
                series.warnings().stream().map(words -> in(zone, words)).toList();
        return new ForecastSeries(
                series.stamp(), series.point(), series.hourly(), series.rain(), warnings);
    }

    /** How a source does and since when. */
    static String of(SourceStatus status, ZoneId zone) {
        String state = switch (status.state()) {
            case OK -> "does well";
            case LATE -> "is late";
            case STALE -> "has only an old forecast";
            case DOWN -> "gives nothing";
            case BLOCKED -> "turns us away";
            case DISABLED -> "is switched off";
        };
        return status.source() + " " + state + " since "
                + WHEN.format(status.since().atZone(zone)) + ": " + in(zone, status.words());
    }
}
