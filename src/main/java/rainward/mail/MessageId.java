package rainward.mail;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * The Message-ID of one event to one recipient (RFC 5322 3.6.4): the same each time it is made, so
 * that servers and readers can tell a second copy.
 *
 * @param event what the mail is about
 * @param recipient whom it is for
 * @param domain of the sender
 */
record MessageId(String event, String recipient, String domain) {

    private static final int READABLE = 40;

    String text() {
        String readable = event.replaceAll("[^A-Za-z0-9-]+", ".").replaceAll("^\\.|\\.$", "");
        String start =
                readable.substring(0, Math.min(READABLE, readable.length())).replaceAll("\\.$", "");
        return "<" + (start.isEmpty() ? "" : start + ".") + fingerprint() + "@" + domain + ">";
    }

    private String fingerprint() {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256")
                    .digest((event + '\n' + recipient).getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(hash, 0, 8);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
