package rainward.store.round;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import rainward.brief.post.FailedTry;
import rainward.brief.post.Outbox;
import rainward.brief.post.OutboxRow;
import rainward.brief.post.Outgoing;
import rainward.store.Store;
import rainward.store.row.Columns;
import rainward.store.row.Line;

/**
 * Messages that wait to go out. They are put in by the piece of work that causes them; the postman
 * takes them through {@link Store#outbox()}, each step a transaction of its own.
 */
public final class OutboxTable implements Outbox {

    private static final String PUT = """
            insert into outbox (event, recipient, channel, subject, content, created_at, send_from,
              give_up_at, state, tries, next_try_at, last_words)
            values (:event, :recipient, :channel, :subject, :content, :created, :from,
              :giveUp, 'WAITING', 0, :from, '')
            on conflict (event, recipient) do nothing
            """;

    /**
     * One at a time to each recipient, so that a closing never overtakes its opening; what is held
     * for the end of somebody's quiet hours lets pass what may go out now.
     */
    private static final String NEXT = """
            select * from outbox as o where state = 'WAITING' and next_try_at <= :now
              and not exists (select 1 from outbox as earlier where earlier.state = 'WAITING'
                and earlier.recipient = o.recipient and earlier.id < o.id
                and (earlier.tries > 0 or earlier.send_from <= :now))
            order by id limit 1
            """;

    private static final String HOLD =
            "update outbox set held = 1, tries = tries + 1, next_try_at = :until where id = :id";

    private final Handle handle;

    public OutboxTable(Handle handle) {
        this.handle = handle;
    }

    /**
     * Puts a message in.
     *
     * @return false where one of its key is there already; then nothing is written
     */
    public boolean put(Outgoing message) {
        return handle.createUpdate(PUT)
                        .bind("event", message.key().event())
                        .bind("recipient", message.key().recipient())
                        .bind("channel", message.channel().name())
                        .bind("subject", message.subject())
                        .bind("content", message.content())
                        .bind("created", message.times().createdAt().toEpochMilli())
                        .bind("from", message.times().sendFrom().toEpochMilli())
                        .bind("giveUp", message.times().giveUpAt().toEpochMilli())
                        .execute()
                == 1;
    }

    /**
     * Lets messages go out now that are held for later and were never tried.
     *
     * @param events what they are about
     * @return how many
     */
    public int hasten(List<String> events, String recipient, Instant now) {
        return events.isEmpty()
                ? 0
                : handle.createUpdate("""
                        update outbox set send_from = :now, next_try_at = :now
                        where state = 'WAITING' and tries = 0 and send_from > :now
                          and recipient = :recipient and event in (<events>)
                        """)
                        .bind("now", now.toEpochMilli())
                        .bind("recipient", recipient)
                        .bindList("events", events)
                        .execute();
    }

    /** How many events of a thread were written of, whatever became of the messages. */
    public int eventsOf(String thread) {
        // '0' is the sign after '/': the range holds all that begins with the thread and a '/'.
        return handle.createQuery("""
                        select count(distinct event) from outbox
                        where event > :thread || '/' and event < :thread || '0'
                        """)
                .bind("thread", thread)
                .mapTo(Integer.class)
                .one();
    }

    @Override
    public Optional<OutboxRow> claim(Instant now, Duration hold) {
        Optional<Long> next = handle.createQuery(NEXT)
                .bind("now", now.toEpochMilli())
                .map((row, context) -> row.getLong("id"))
                .findOne();
        next.ifPresent(id -> handle.createUpdate(HOLD)
                .bind("until", now.plus(hold).toEpochMilli())
                .bind("id", id)
                .execute());
        return next.flatMap(this::row);
    }

    /**
     * Makes messages due again that were being handed over when the process died. For the service,
     * at its start and with the folder's lock in hand: nobody else is handing over then.
     *
     * @return how many
     */
    public int freeHeld(Instant now) {
        return handle.createUpdate("""
                        update outbox set held = 0, next_try_at = :now
                        where held = 1 and state = 'WAITING'
                        """).bind("now", now.toEpochMilli()).execute();
    }

    @Override
    public void markSent(long id, Instant at, String serverSaid) {
        end(id, OutboxRow.State.SENT, at, serverSaid);
    }

    @Override
    public void markFailed(long id, FailedTry failure) {
        if (failure.ending() != OutboxRow.State.WAITING) {
            end(id, failure.ending(), failure.at(), failure.why());
            return;
        }
        handle.createUpdate("""
                        update outbox set held = 0, next_try_at = :next, last_words = :words
                        where id = :id and state = 'WAITING'
                        """)
                .bind("id", id)
                .bind("next", failure.retryAt().orElse(failure.at()).toEpochMilli())
                .bind("words", failure.why())
                .execute();
    }

    /** What the server has taken stays taken, whatever is said about it later. */
    private boolean end(long id, OutboxRow.State state, Instant at, String words) {
        return handle.createUpdate("""
                                update outbox set state = :state, ended_at = :at,
                                  held = 0, next_try_at = null, last_words = :words
                                where id = :id and state <> 'SENT'
                                """)
                        .bind("id", id)
                        .bind("state", state.name())
                        .bind("at", at.toEpochMilli())
                        .bind("words", words)
                        .execute()
                == 1;
    }

    /** Tries a message again at once that was refused, given up, dropped or still waits. */
    public boolean retry(long id, Instant now, Instant giveUpAt) {
        return handle.createUpdate("""
                                update outbox set state = 'WAITING', next_try_at = :now,
                                  give_up_at = :giveUp, ended_at = null
                                where id = :id and state <> 'SENT'
                                """)
                        .bind("id", id)
                        .bind("now", now.toEpochMilli())
                        .bind("giveUp", giveUpAt.toEpochMilli())
                        .execute()
                == 1;
    }

    /** Takes a message out that has not been sent. */
    public boolean drop(long id, Instant now) {
        return end(id, OutboxRow.State.DROPPED, now, "dropped by a person");
    }

    /** Lets go of messages that ended before a moment; what waits stays. */
    public int forgetBefore(Instant moment) {
        return handle.createUpdate(
                        "delete from outbox where state <> 'WAITING' and ended_at < :moment")
                .bind("moment", moment.toEpochMilli())
                .execute();
    }

    /** Takes out all that waits: after a restore nobody knows what of it went out since. */
    public int dropWaiting(Instant now, String why) {
        return handle.createUpdate("""
                        update outbox set state = 'DROPPED', ended_at = :at, held = 0,
                          next_try_at = null, last_words = :why
                        where state = 'WAITING'
                        """)
                .bind("at", now.toEpochMilli())
                .bind("why", why)
                .execute();
    }

    public Optional<OutboxRow> row(long id) {
        return handle.createQuery("select * from outbox where id = :id")
                .bind("id", id)
                .map(Line.of(OutboxTable::read))
                .findOne();
    }

    /** Messages that stand so, the oldest first. */
    public List<OutboxRow> in(OutboxRow.State state) {
        return handle.createQuery("select * from outbox where state = :state order by id")
                .bind("state", state.name())
                .map(Line.of(OutboxTable::read))
                .list();
    }

    /** Messages written since then, the oldest first. */
    public List<OutboxRow> since(Instant moment) {
        return handle.createQuery("select * from outbox where created_at >= :moment order by id")
                .bind("moment", moment.toEpochMilli())
                .map(Line.of(OutboxTable::read))
                .list();
    }

    private static OutboxRow read(ResultSet row, StatementContext context) throws SQLException {
        Outgoing message = new Outgoing(
                new Outgoing.Key(row.getString("event"), row.getString("recipient")),
                Outgoing.Channel.valueOf(row.getString("channel")),
                row.getString("subject"),
                row.getBytes("content"),
                new Outgoing.Times(
                        Columns.instant(row, "created_at"),
                        Columns.instant(row, "send_from"),
                        Columns.instant(row, "give_up_at")));
        return new OutboxRow(row.getLong("id"), message, progress(row));
    }

    private static OutboxRow.Progress progress(ResultSet row) throws SQLException {
        return new OutboxRow.Progress(
                OutboxRow.State.valueOf(row.getString("state")),
                row.getInt("tries"),
                Columns.maybeInstant(row, "next_try_at"),
                Columns.maybeInstant(row, "ended_at"),
                row.getString("last_words"));
    }
}
