package rainward.feed.wire;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import rainward.feed.reading.Json;
import rainward.feed.reading.Unreadable;
import rainward.feed.terms.Service;
import rainward.feed.wire.Answer.Why;
import rainward.feed.wire.Wire.Reply;
import rainward.weather.source.PullOutcome.Kind;

/** Turns an error status and its body (RFC 9457 problem, error object or web page) into words. */
public final class Refusals {

    private Refusals() {}

    static Why of(Service service, Reply reply, Instant now) {
        Kind kind = kind(reply.status());
        Optional<Instant> retryAt =
                RetryAfter.parse(reply.header("retry-after"), now).map(now::plus);
        if (kind == Kind.THROTTLED && retryAt.isEmpty()) {
            retryAt = resetNamed(said(reply), now);
        }
        return new Why(kind, words(service, kind, reply), reply.status(), retryAt);
    }

    private static Kind kind(int status) {
        return switch (status) {
            case 401, 403 -> Kind.BLOCKED;
            case 404, 410, 422 -> Kind.NOT_SERVED;
            case 429 -> Kind.THROTTLED;
            case 408 -> Kind.UNREACHABLE;
            default -> status >= 499 ? Kind.SERVER_FAULT : Kind.REFUSED;
        };
    }

    private static String words(Service service, Kind kind, Reply reply) {
        String said = said(reply);
        String tail = " (" + reply.status() + (said.isEmpty() ? "" : ", \"" + said + "\"") + ")";
        return switch (kind) {
            case BLOCKED ->
                "turns us away" + tail + "; check the contact in the settings"
                        + (service == Service.OPEN_METEO ? " and the key" : "");
            case NOT_SERVED -> "has nothing for this place" + tail;
            case THROTTLED -> "says that it is asked too often" + tail;
            case UNREACHABLE -> "gave up waiting for us" + tail;
            case SERVER_FAULT -> "is in trouble itself" + tail;
            default -> "does not accept the question" + tail;
        };
    }

    /** What the service says about it, if it says it in a form we can read; at most 160 letters. */
    static String said(Reply reply) {
        String type = reply.header("content-type").toLowerCase(Locale.ROOT);
        if (reply.body().length == 0 || type.contains("html")) {
            return type.contains("html") ? "a web page" : "";
        }
        try {
            JsonNode problem = Json.read(reply.body());
            for (String key : new String[] {"title", "reason", "error", "detail"}) {
                if (problem.path(key).isTextual()) {
                    String detail = key.equals("title") ? problem.path("detail").asText("") : "";
                    return Json.cut(
                            problem.path(key).asText() + (detail.isEmpty() ? "" : ": " + detail));
                }
            }
            return "";
        } catch (Unreadable e) {
            return "";
        }
    }

    /** Open-Meteo says in words which of its limits was reached; limits reset on the full unit. */
    public static Optional<Instant> resetNamed(String said, Instant now) {
        String words = said.toLowerCase(Locale.ROOT);
        Duration unit = words.contains("minutely")
                ? Duration.ofMinutes(1)
                : words.contains("hourly")
                        ? Duration.ofHours(1)
                        : words.contains("daily") ? Duration.ofDays(1) : Duration.ZERO;
        if (unit.isZero()) {
            return Optional.empty();
        }
        long seconds = unit.toSeconds();
        return Optional.of(Instant.ofEpochSecond((now.getEpochSecond() / seconds + 1) * seconds));
    }
}
