package rainward.daemon.board;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.board.house.Mark;
import rainward.board.house.Standing;
import rainward.brief.ForecastAge;
import rainward.brief.post.OutboxRow;
import rainward.daemon.keep.NightDesk;
import rainward.daemon.keep.TroubleDesk;
import rainward.daemon.office.Office;

/** Looks at the service that cost nothing: no network, no long query. */
final class ServiceMarks {

    private static final long LEAST_FREE_MB = 200;
    private static final Duration MAIL_STUCK = Duration.ofHours(1);

    private final Office office;

    ServiceMarks(Office office) {
        this.office = office;
    }

    List<Mark> of(Standing standing, List<OutboxRow> outbox) {
        List<Mark> marks = new ArrayList<>();
        marks.add(order(standing));
        marks.add(forecast(standing));
        marks.add(mail(outbox));
        marks.add(disk());
        office.store().read(NightDesk::last).map(ServiceMarks::backup).ifPresent(marks::add);
        return marks.stream().map(this::sinceWhen).toList();
    }

    private static Mark backup(NightDesk.Night night) {
        return new Mark("backup", night.well(), night.words());
    }

    /** What is wrong, with the hour since when it is. */
    private Mark sinceWhen(Mark mark) {
        Optional<Instant> since = mark.well()
                ? Optional.empty()
                : office.store().read(books -> TroubleDesk.since(books, mark.what()));
        return since.map(at -> new Mark(
                        mark.what(),
                        false,
                        mark.words() + ", since " + office.dayClock().near(at, office.now())))
                .orElse(mark);
    }

    private Mark order(Standing standing) {
        Optional<Instant> asOf = standing.round().map(r -> r.outlook().asOf());
        if (asOf.isEmpty()) {
            return new Mark("order", standing.reckoning(), "the first one is being worked out");
        }
        Duration allowed = office.settings().weather().pace().pullEvery().multipliedBy(3);
        boolean late = Duration.between(asOf.get(), office.now()).compareTo(allowed) > 0;
        return new Mark(
                "order",
                !late,
                late
                        ? "is older than three pulls: is the service running?"
                        : standing.round().get().outlook().plan().items().size()
                                + " pieces of work in it");
    }

    private Mark forecast(Standing standing) {
        Optional<Instant> oldest = standing.round().stream()
                .flatMap(r -> r.outlook().forecasts().values().stream())
                .map(stamp -> stamp.issuedAt())
                .min(Instant::compareTo);
        if (oldest.isEmpty()) {
            return new Mark("forecast", false, "there is none: see the page of the weather");
        }
        Duration age = Duration.between(oldest.get(), office.now());
        boolean fresh = age.compareTo(ForecastAge.SAID_AT_THE_TOP) <= 0;
        return new Mark("forecast", fresh, "the oldest was issued " + age.toHours() + " h ago");
    }

    private Mark mail(List<OutboxRow> outbox) {
        long lost = outbox.stream()
                .filter(row -> row.progress().state() == OutboxRow.State.REFUSED
                        || row.progress().state() == OutboxRow.State.GIVEN_UP)
                .count();
        Instant early = office.now().minus(MAIL_STUCK);
        long stuck = outbox.stream()
                .filter(row -> row.progress().state() == OutboxRow.State.WAITING)
                .filter(row -> row.message().times().sendFrom().isBefore(early))
                .count();
        return new Mark(
                "mail",
                lost == 0 && stuck == 0,
                lost + " refused or given up, " + stuck + " waiting for more than an hour");
    }

    private Mark disk() {
        try {
            long freeMb = Files.getFileStore(office.home().path()).getUsableSpace() >> 20;
            String free = freeMb < 10_000 ? freeMb + " MB free" : freeMb / 1024 + " GB free";
            return new Mark("disk", freeMb >= LEAST_FREE_MB, free);
        } catch (IOException e) {
            return new Mark("disk", false, "cannot be asked: " + e.getMessage());
        }
    }
}
