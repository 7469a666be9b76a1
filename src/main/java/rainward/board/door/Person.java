package rainward.board.door;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * Somebody who may come in from the network.
 *
 * @param name as the crew says it
 * @param role what they may do
 * @param pinHash of their PIN, by {@link PinHash}
 */
public record Person(String name, Role role, String pinHash) {

    /**
     * What the address of their calendar ends in. Calendar programs keep no session; who knows the
     * address sees the work of that person and nothing else, until their PIN is changed.
     */
    public String calendarKey() {
        try {
            byte[] sum = MessageDigest.getInstance("SHA-256")
                    .digest(("calendar " + name + " " + pinHash).getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(sum, 0, 20);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
