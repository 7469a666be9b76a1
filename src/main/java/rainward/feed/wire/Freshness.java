package rainward.feed.wire;

import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rainward.weather.source.LastGoodCopies.Copy;

/**
 * How long a copy counts as fresh (RFC 9111, 4.2): max-age less Age, else Expires less Date. Both
 * ends come from the server's clock, so a wrong PC clock changes nothing.
 */
final class Freshness {

    private static final Pattern MAX_AGE = Pattern.compile("(?:^|[\\s,])max-age=\"?(\\d{1,9})");

    private Freshness() {}

    /** True where the copy need not be asked for again. */
    static boolean holds(Copy copy, Ask ask, Instant asOf) {
        Instant confirmed = copy.times().confirmedAt();
        boolean clockWentBack = asOf.isBefore(confirmed.minus(Duration.ofHours(1)));
        return !clockWentBack && asOf.isBefore(confirmed.plus(lifetime(copy, ask)));
    }

    /** When the copy has to be asked for again. */
    static Instant endOf(Copy copy, Ask ask) {
        return copy.times().confirmedAt().plus(lifetime(copy, ask));
    }

    static Duration lifetime(Copy copy, Ask ask) {
        Duration said = said(copy).orElse(Duration.ZERO);
        Duration least = ask.wish().leastAge();
        Duration longest = ask.wish().longestAge();
        Duration atLeast = said.compareTo(least) < 0 ? least : said;
        return atLeast.compareTo(longest) > 0 ? longest : atLeast;
    }

    private static Optional<Duration> said(Copy copy) {
        String control = copy.headers().getOrDefault("cache-control", "").toLowerCase(Locale.ROOT);
        if (control.contains("no-store") || control.contains("no-cache")) {
            return Optional.of(Duration.ZERO);
        }
        Matcher maxAge = MAX_AGE.matcher(control);
        if (maxAge.find()) {
            long age = Math.max(0, seconds(copy.headers().getOrDefault("age", "0")));
            return Optional.of(Duration.ofSeconds(Long.parseLong(maxAge.group(1)) - age));
        }
        return byExpires(copy);
    }

    private static Optional<Duration> byExpires(Copy copy) {
        Optional<Instant> expires =
                Optional.ofNullable(copy.headers().get("expires")).flatMap(RetryAfter::date);
        Instant sent = Optional.ofNullable(copy.headers().get("date"))
                .flatMap(RetryAfter::date)
                .orElse(copy.times().confirmedAt());
        return expires.map(end -> Duration.between(sent, end));
    }

    private static long seconds(String text) {
        return text.strip().matches("\\d{1,9}") ? Long.parseLong(text.strip()) : 0;
    }
}
