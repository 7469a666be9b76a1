package rainward.brief.post;

import java.time.Instant;
import rainward.farm.Require;

/**
 * One message to one recipient, finished: it goes out byte for byte as it is here, however often it
 * is tried, so that a second copy can be told by its Message-ID.
 *
 * @param key what it is about and whom it is for; no two messages share one
 * @param channel the way out
 * @param subject for lists and logs
 * @param content the whole mail, or the body of the webhook call
 * @param times when it may be tried
 */
public record Outgoing(Key key, Channel channel, String subject, byte[] content, Times times) {

    /** The ways out. */
    public enum Channel {
        MAIL,
        WEBHOOK
    }

    /**
     * One event to one recipient.
     *
     * @param event for instance {@code brief/2026-07-16} or {@code window/ab12/opened/1}
     * @param recipient mail address or web address
     */
    public record Key(String event, String recipient) {

        public Key {
            Require.named("event", event);
            Require.named("recipient", recipient);
        }
    }

    /**
     * When it may be tried.
     *
     * @param createdAt when it was written
     * @param sendFrom not before then: the start of the recipient's send window
     * @param giveUpAt not after then
     */
    public record Times(Instant createdAt, Instant sendFrom, Instant giveUpAt) {

        public Times {
            Require.that(
                    giveUpAt.isAfter(sendFrom),
                    "given up at " + giveUpAt + ", not after it may first be sent, " + sendFrom);
        }
    }
}
