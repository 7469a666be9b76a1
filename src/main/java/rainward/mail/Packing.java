package rainward.mail;

import java.time.Duration;
import java.time.Instant;
import rainward.brief.post.Letter;
import rainward.brief.post.Outgoing;
import rainward.brief.post.Recipient;

/** Puts letters into the form in which they go out. */
public final class Packing {

    private static final Duration TRIED_AT_LEAST = Duration.ofMinutes(10);

    private final MimeLetter mime;
    private final Duration triedFor;

    /**
     * Packs for one farm.
     *
     * @param mime makes mails
     * @param triedFor how long a message is tried before it is given up, if it is of use so long
     */
    public Packing(MimeLetter mime, Duration triedFor) {
        this.mime = mime;
        this.triedFor = triedFor;
    }

    /**
     * A message for the outbox.
     *
     * @param letter what it says
     * @param recipient whom it is for
     * @param sendFrom not before then
     */
    public Outgoing pack(Letter letter, Recipient recipient, Instant sendFrom) {
        Outgoing.Channel channel = recipient.address().channel();
        byte[] content = switch (channel) {
            case MAIL -> mime.bytes(letter, recipient);
            case WEBHOOK -> HookCall.bytes(letter);
        };
        return new Outgoing(
                new Outgoing.Key(letter.event(), recipient.address().where()),
                channel,
                letter.subject(),
                content,
                new Outgoing.Times(
                        letter.written().at(), sendFrom, giveUpAt(letter.written(), sendFrom)));
    }

    /** Mail that comes too late is worth nothing; but whatever is written is tried once. */
    private Instant giveUpAt(Letter.Written written, Instant sendFrom) {
        Instant usual = sendFrom.plus(triedFor);
        Instant first = sendFrom.plus(TRIED_AT_LEAST);
        return written.usefulUntil()
                .filter(end -> end.isBefore(usual))
                .map(end -> end.isBefore(first) ? first : end)
                .orElse(usual);
    }
}
