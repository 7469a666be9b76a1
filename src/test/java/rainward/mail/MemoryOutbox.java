package rainward.mail;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rainward.brief.post.FailedTry;
import rainward.brief.post.Outbox;
import rainward.brief.post.OutboxRow;
import rainward.brief.post.OutboxRow.Progress;
import rainward.brief.post.OutboxRow.State;
import rainward.brief.post.Outgoing;

/** An outbox that keeps to its contract and forgets at the end. */
final class MemoryOutbox implements Outbox {

    private final List<OutboxRow> rows = new ArrayList<>();

    MemoryOutbox put(Outgoing... messages) {
        Arrays.stream(messages)
                .filter(m -> rows.stream().noneMatch(r -> r.message().key().equals(m.key())))
                .forEach(m -> rows.add(new OutboxRow(
                        rows.size() + 1L,
                        m,
                        new Progress(
                                State.WAITING,
                                0,
                                Optional.of(m.times().sendFrom()),
                                Optional.empty(),
                                ""))));
        return this;
    }

    Progress of(Outgoing message) {
        return rows.stream()
                .filter(r -> r.message().key().equals(message.key()))
                .map(OutboxRow::progress)
                .findFirst()
                .orElseThrow();
    }

    @Override
    public Optional<OutboxRow> claim(Instant now, Duration hold) {
        Optional<OutboxRow> due = rows.stream()
                .filter(row -> row.progress().state() == State.WAITING)
                .filter(row -> rows.stream().noneMatch(earlier -> holdsUp(earlier, row, now)))
                .filter(row -> !row.progress().nextTryAt().orElse(Instant.MAX).isAfter(now))
                .findFirst();
        return due.map(row -> set(
                row.id(),
                new Progress(
                        State.WAITING,
                        row.progress().tries() + 1,
                        Optional.of(now.plus(hold)),
                        Optional.empty(),
                        row.progress().lastWords())));
    }

    private static boolean holdsUp(OutboxRow earlier, OutboxRow row, Instant now) {
        return earlier.id() < row.id()
                && earlier.progress().state() == State.WAITING
                && (earlier.progress().tries() > 0
                        || !earlier.message().times().sendFrom().isAfter(now))
                && earlier.message()
                        .key()
                        .recipient()
                        .equals(row.message().key().recipient());
    }

    @Override
    public void markSent(long id, Instant at, String serverSaid) {
        end(id, State.SENT, at, serverSaid);
    }

    @Override
    public void markFailed(long id, FailedTry failure) {
        if (failure.retryAt().isEmpty()) {
            end(id, failure.ending(), failure.at(), failure.why());
            return;
        }
        set(
                id,
                new Progress(
                        State.WAITING,
                        row(id).progress().tries(),
                        failure.retryAt(),
                        Optional.empty(),
                        failure.why()));
    }

    private void end(long id, State state, Instant at, String words) {
        set(
                id,
                new Progress(
                        state,
                        row(id).progress().tries(),
                        Optional.empty(),
                        Optional.of(at),
                        words));
    }

    private OutboxRow row(long id) {
        return rows.get((int) id - 1);
    }

    private OutboxRow set(long id, Progress progress) {
        OutboxRow changed = new OutboxRow(id, row(id).message(), progress);
        rows.set((int) id - 1, changed);
        return changed;
    }
}
