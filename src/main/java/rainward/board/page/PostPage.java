package rainward.board.page;

import java.util.Comparator;
import java.util.List;
import rainward.board.house.Mark;
import rainward.brief.post.OutboxRow;

/**
 * Mail on its way, and how the service is.
 *
 * @param frame around it
 * @param rows messages, the newest first
 * @param marks looks at the service
 */
public record PostPage(Frame frame, List<Row> rows, List<Mark> marks) {

    /** A message. */
    public record Row(
            long id,
            String state,
            String subject,
            String recipient,
            String written,
            String said,
            boolean waits,
            boolean lost) {}

    public static PostPage of(Frame frame, List<OutboxRow> outbox, List<Mark> marks) {
        return new PostPage(
                frame,
                outbox.stream()
                        .sorted(Comparator.comparingLong(OutboxRow::id).reversed())
                        .map(row -> row(frame, row))
                        .toList(),
                marks);
    }

    private static Row row(Frame frame, OutboxRow row) {
        OutboxRow.State state = row.progress().state();
        return new Row(
                row.id(),
                state.words(),
                row.message().subject(),
                row.message().key().recipient(),
                frame.reader().clock().dayTime(row.message().times().createdAt()),
                row.progress().lastWords(),
                state == OutboxRow.State.WAITING,
                state == OutboxRow.State.REFUSED || state == OutboxRow.State.GIVEN_UP);
    }
}
