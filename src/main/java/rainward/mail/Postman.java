package rainward.mail;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rainward.brief.post.FailedTry;
import rainward.brief.post.Outbox;
import rainward.brief.post.OutboxRow;
import rainward.brief.post.Outgoing;
import rainward.brief.post.RetrySchedule;

/**
 * Empties the outbox: each message that is due is handed over once, and what came of it is recorded
 * before the next is taken.
 *
 * <p>Limit: between the server's yes and our record of it nothing can be known. If the process dies
 * in that moment, the message comes back when its hold ends and is sent a second time, with the
 * same bytes and the same Message-ID: at most one duplicate for each such death. SMTP has no way to
 * ask whether a message was taken (RFC 5321 4.5.3.2.6 and 6.1 leave the duplicate to the sender);
 * the gap is kept to one local write.
 */
public final class Postman {

    private static final Logger LOG = LoggerFactory.getLogger(Postman.class);

    /** Longer than any try takes, so that no message is out twice at a time. */
    static final Duration HOLD = Duration.ofMinutes(10);

    private final Outbox outbox;
    private final Map<Outgoing.Channel, Courier> couriers;
    private final RetrySchedule schedule;

    public Postman(Outbox outbox, Map<Outgoing.Channel, Courier> couriers, RetrySchedule schedule) {
        this.outbox = outbox;
        this.couriers = Map.copyOf(couriers);
        this.schedule = schedule;
    }

    /**
     * Hands over all that is due.
     *
     * @param now read anew for each message, because servers may be slow
     * @return how many were taken
     */
    public int drain(Supplier<Instant> now) {
        int taken = 0;
        Optional<OutboxRow> next = outbox.claim(now.get(), HOLD);
        while (next.isPresent()) {
            taken += handOver(next.get(), now) ? 1 : 0;
            next = outbox.claim(now.get(), HOLD);
        }
        return taken;
    }

    /** A machine that slept may hold mail whose time is over: that is not sent any more. */
    private boolean handOver(OutboxRow row, Supplier<Instant> now) {
        Instant start = now.get();
        if (!start.isBefore(row.message().times().giveUpAt())) {
            String why = row.progress().lastWords().isEmpty()
                    ? "was not tried before it was of no more use"
                    : row.progress().lastWords();
            outbox.markFailed(row.id(), FailedTry.givenUp(start, why));
            LOG.warn("too late for {}: {}", row.message().key(), why);
            return false;
        }
        Delivery delivery = courier(row).deliver(row.message());
        record(row, delivery, now.get());
        return delivery instanceof Delivery.Accepted;
    }

    private Courier courier(OutboxRow row) {
        Outgoing.Channel channel = row.message().channel();
        return couriers.getOrDefault(
                channel,
                message -> Delivery.Passing.because(
                        switch (channel) {
                            case MAIL -> "no mail server is set up; it waits until one is";
                            case WEBHOOK -> "no web calls are set up; it waits until they are";
                        }));
    }

    private void record(OutboxRow row, Delivery delivery, Instant at) {
        if (delivery instanceof Delivery.Accepted accepted) {
            outbox.markSent(row.id(), at, accepted.said());
            LOG.info("sent {}: {}", row.message().key(), accepted.said());
            return;
        }
        FailedTry failure = failure(row, delivery, at);
        outbox.markFailed(row.id(), failure);
        LOG.warn("{} {}: {}", failure.ending(), row.message().key(), failure.why());
    }

    private FailedTry failure(OutboxRow row, Delivery delivery, Instant at) {
        if (delivery instanceof Delivery.Passing passing) {
            return schedule.next(
                            at,
                            row.progress().tries(),
                            passing.comeAgainAfter(),
                            row.message().times().giveUpAt())
                    .map(retryAt -> FailedTry.again(at, passing.said(), retryAt))
                    .orElseGet(() -> FailedTry.givenUp(at, passing.said()));
        }
        return FailedTry.refused(at, delivery.said());
    }
}
