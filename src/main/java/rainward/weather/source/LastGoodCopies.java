package rainward.weather.source;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import rainward.farm.Require;

/**
 * Where the last good answer to each question is kept over restarts; what makes conditional
 * requests and honoured expiry possible. A copy that cannot be read back whole counts as absent.
 */
public interface LastGoodCopies {

    /** The copy kept for an address, if there is one and it is whole. */
    Optional<Copy> find(String address);

    /** Replaces the copy of its address, all or nothing. */
    void keep(Copy copy);

    /**
     * A good answer.
     *
     * @param address what was asked, without any key
     * @param headers by lower-case name
     * @param body decoded bytes
     * @param sha256 of the body, lower-case hex
     * @param times when it came, and when it was last known to hold
     */
    record Copy(
            String address, Map<String, String> headers, byte[] body, String sha256, Times times) {

        public Copy {
            Require.named("address", address);
            headers = Map.copyOf(headers);
        }

        /** The same copy, confirmed once more with the headers that came with the confirmation. */
        public Copy confirmed(Instant at, Map<String, String> newHeaders) {
            return new Copy(address, newHeaders, body, sha256, new Times(times.fetchedAt(), at));
        }
    }

    /**
     * Age of a copy.
     *
     * @param fetchedAt when the body came
     * @param confirmedAt when the service last said that it still holds
     */
    record Times(Instant fetchedAt, Instant confirmedAt) {}
}
