package rainward.board.door;

import io.github.bucket4j.Bucket;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Lets people in by name and PIN, and slows down whoever guesses: five wrong PINs a quarter of an
 * hour for one name, twenty for one address, and a hundred for all together.
 */
public final class Doorbell {

    private static final Duration WHILE = Duration.ofMinutes(15);
    private static final int A_NAME = 5;
    private static final int AN_ADDRESS = 20;
    private static final int ALL = 100;

    /** Buckets kept; more callers than that push the oldest out, while {@link #ALL} holds. */
    private static final int MOST_CALLERS = 1000;

    /** Of nobody's PIN, as slow as the others: an unknown name takes as long as a known one. */
    static final String NOBODY = "$2b$12$Ht//z17J1pLiODnhzRwTAuh7FYwB8853os.KlZz5pleVOyaPCZTTm";

    private final Keyring keyring;
    private final Map<String, Bucket> buckets = new LinkedHashMap<>();

    public Doorbell(Keyring keyring) {
        this.keyring = keyring;
    }

    /**
     * What came of ringing.
     *
     * @param person who is let in
     * @param words why nobody is
     */
    public record Ring(Optional<Person> person, String words) {}

    /** Checks a PIN. */
    public Ring ring(String name, String pin, String address) {
        if (!mayTry(name, address)) {
            return new Ring(
                    Optional.empty(),
                    "Too many wrong PINs: wait a quarter of an hour, or have the lead set a new"
                            + " one.");
        }
        Optional<Person> person = keyring.named(name);
        boolean right = PinHash.matches(pin, person.map(Person::pinHash).orElse(NOBODY));
        if (right && person.isPresent()) {
            forget(name, address);
            return new Ring(person, "");
        }
        return new Ring(Optional.empty(), "That name and PIN do not go together.");
    }

    private synchronized boolean mayTry(String name, String address) {
        return bucket("all", ALL).tryConsume(1)
                && bucket("address " + address, AN_ADDRESS).tryConsume(1)
                && bucket("name " + name, A_NAME).tryConsume(1);
    }

    private synchronized void forget(String name, String address) {
        buckets.remove("name " + name);
        bucket("address " + address, AN_ADDRESS).addTokens(1);
        bucket("all", ALL).addTokens(1);
    }

    private Bucket bucket(String caller, int tries) {
        if (buckets.size() >= MOST_CALLERS && !buckets.containsKey(caller)) {
            buckets.keySet().stream()
                    .filter(key -> !key.equals("all"))
                    .findFirst()
                    .ifPresent(buckets::remove);
        }
        return buckets.computeIfAbsent(
                caller,
                key -> Bucket.builder()
                        .addLimit(limit -> limit.capacity(tries).refillIntervally(tries, WHILE))
                        .build());
    }
}
