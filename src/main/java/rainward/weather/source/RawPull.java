package rainward.weather.source;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import rainward.farm.Require;

/**
 * An answer exactly as a service gave it, so that any past decision can be explained and replayed.
 *
 * @param source short name of the service
 * @param address what was asked, without any key
 * @param status HTTP status
 * @param headers by lower-case name, several values joined by a comma
 * @param body decoded bytes
 * @param fetchedAt when it came
 * @param issuedAt when the service issued it, where the answer says so
 */
public record RawPull(
        String source,
        String address,
        int status,
        Map<String, String> headers,
        byte[] body,
        Instant fetchedAt,
        Optional<Instant> issuedAt) {

    public RawPull {
        Require.named("source", source);
        Require.named("address", address);
        headers = Map.copyOf(headers);
    }

    /** The same answer with its time of issue. */
    public RawPull issued(Instant at) {
        return new RawPull(source, address, status, headers, body, fetchedAt, Optional.of(at));
    }
}
