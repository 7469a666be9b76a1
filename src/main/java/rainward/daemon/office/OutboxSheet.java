package rainward.daemon.office;

import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.brief.post.OutboxRow;
import rainward.store.Books;

/**
 * A message as a line of a table: what {@code outbox --json} prints for each.
 *
 * @param id to name it by
 * @param state waiting, sent, refused, given up or dropped
 * @param recipient address
 * @param subject of the mail
 * @param writtenAt local time
 * @param tries so far
 * @param nextTryAt while it waits
 * @param lastWords of the server or the network
 */
public record OutboxSheet(
        long id,
        String state,
        String recipient,
        String subject,
        OffsetDateTime writtenAt,
        int tries,
        Optional<OffsetDateTime> nextTryAt,
        String lastWords) {

    private static final Duration SHOWN = Duration.ofDays(7);

    /** Mail that waits, and that of the last week, by number. */
    public static List<OutboxRow> rows(Books books, Instant now) {
        Instant since = now.minus(SHOWN);
        return Stream.concat(
                        books.outbox().in(OutboxRow.State.WAITING).stream()
                                .filter(row -> row.message().times().createdAt().isBefore(since)),
                        books.outbox().since(since).stream())
                .sorted(Comparator.comparingLong(OutboxRow::id))
                .toList();
    }

    /** The same as lines, times in the farm's zone. */
    public static List<OutboxSheet> of(Office office) {
        ZoneId zone = office.zone();
        return office.store().read(books -> rows(books, office.now())).stream()
                .map(row -> of(row, zone))
                .toList();
    }

    private static OutboxSheet of(OutboxRow row, ZoneId zone) {
        OutboxRow.Progress progress = row.progress();
        return new OutboxSheet(
                row.id(),
                progress.state().words(),
                row.message().key().recipient(),
                row.message().subject(),
                row.message().times().createdAt().atZone(zone).toOffsetDateTime(),
                progress.tries(),
                progress.nextTryAt().map(at -> at.atZone(zone).toOffsetDateTime()),
                progress.lastWords());
    }
}
