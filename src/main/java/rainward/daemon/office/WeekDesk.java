package rainward.daemon.office;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import rainward.brief.Brief.WeekReport;
import rainward.brief.post.OutboxRow;
import rainward.input.check.StandVerdict;
import rainward.store.Books;
import rainward.store.journal.StandBook;
import rainward.store.round.BriefLog;

/** Where the service reports on itself, in the brief of each Monday. */
final class WeekDesk {

    private static final int DAYS = 7;

    private final Office office;

    WeekDesk(Office office) {
        this.office = office;
    }

    /** The seven days before a Monday's brief; empty on other days and before the first brief. */
    Optional<WeekReport> report(Books books, Instant dueAt) {
        LocalDate today = LocalDate.ofInstant(dueAt, office.zone());
        List<BriefLog.WrittenBrief> briefs = today.minusDays(DAYS)
                .datesUntil(today)
                .flatMap(day -> books.briefs().of(day).stream())
                .toList();
        if (today.getDayOfWeek() != DayOfWeek.MONDAY || briefs.isEmpty()) {
            return Optional.empty();
        }
        Instant since = today.minusDays(DAYS).atStartOfDay(office.zone()).toInstant();
        return Optional.of(new WeekReport(
                post(briefs, books.outbox().since(since)),
                seededHa(books, since, dueAt),
                stands(books.stands().since(since))));
    }

    private static WeekReport.Post post(
            List<BriefLog.WrittenBrief> briefs, List<OutboxRow> messages) {
        return new WeekReport.Post(
                briefs.size(),
                (int) briefs.stream().filter(BriefLog.WrittenBrief::late).count(),
                count(messages, OutboxRow.State.SENT),
                count(messages, OutboxRow.State.REFUSED)
                        + count(messages, OutboxRow.State.GIVEN_UP));
    }

    private static int count(List<OutboxRow> messages, OutboxRow.State state) {
        return (int)
                messages.stream().filter(row -> row.progress().state() == state).count();
    }

    private double seededHa(Books books, Instant since, Instant until) {
        return books.cases().stream()
                .filter(item -> office.roster()
                        .sownAt(item)
                        .filter(at -> !at.isBefore(since) && at.isBefore(until))
                        .isPresent())
                .mapToDouble(item -> item.field().areaHa())
                .sum();
    }

    /** Of the looks beside which a chance was given: only these can be held against it. */
    private static WeekReport.Stands stands(List<StandBook.StandCheck> checks) {
        List<StandBook.StandCheck> told = checks.stream()
                .filter(check -> check.finding().chanceAtSeeding().isPresent())
                .toList();
        return new WeekReport.Stands(
                (int) told.stream()
                        .filter(check -> check.result() == StandVerdict.UP)
                        .count(),
                told.size(),
                told.stream()
                        .mapToDouble(check -> check.finding().chanceAtSeeding().getAsDouble())
                        .average()
                        .orElse(0));
    }
}
