package rainward.brief;

import java.time.Duration;
import java.time.Instant;

/**
 * How old the forecast of a property is.
 *
 * @param property its name
 * @param source short name of the service
 * @param issuedAt when the service issued it
 * @param age when the brief was written
 */
public record ForecastAge(String property, String source, Instant issuedAt, Duration age) {

    /** Past this age the brief says so at the top. */
    public static final Duration SAID_AT_THE_TOP = Duration.ofHours(12);

    /** Past this age chances are not shown as if fresh. */
    public static final Duration NOT_FRESH = Duration.ofHours(36);

    /** How much a forecast may be trusted, best first. */
    public enum Trust {
        FRESH,
        AGEING,
        STALE,
        NONE
    }

    public Trust trust() {
        if (age.compareTo(NOT_FRESH) > 0) {
            return Trust.STALE;
        }
        return age.compareTo(SAID_AT_THE_TOP) > 0 ? Trust.AGEING : Trust.FRESH;
    }
}
