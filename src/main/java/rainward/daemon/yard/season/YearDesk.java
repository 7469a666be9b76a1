package rainward.daemon.yard.season;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import rainward.daemon.office.Office;
import rainward.farm.Field;
import rainward.farm.Operation;
import rainward.input.record.Applied;
import rainward.store.Books;
import rainward.store.journal.JournalEntry;
import rainward.store.journal.StandBook;
import rainward.store.ledger.LedgerLine;

/** Where the records become the year of each field. */
public final class YearDesk {

    private final Office office;

    public YearDesk(Office office) {
        this.office = office;
    }

    /** The year of every field, in the order of the import. */
    public List<FieldYear> all(Books books, int year) {
        List<JournalEntry> journal = books.journal().everything();
        Set<Long> undone = undone(journal);
        Map<String, List<JournalEntry>> counting = journal.stream()
                .filter(entry -> entry.kind() != JournalEntry.Kind.UNDONE)
                .filter(entry -> !undone.contains(entry.id()))
                .filter(entry -> day(entry.said().at()).getYear() == year)
                .collect(Collectors.groupingBy(JournalEntry::field));
        Map<String, List<StandBook.StandCheck>> looks = books.stands().since(start(year)).stream()
                .collect(Collectors.groupingBy(StandBook.StandCheck::field));
        Map<String, List<LedgerLine<Applied>>> applied = books.ledger().all(Applied.class).stream()
                .filter(line -> day(line.said().at()).getYear() == year)
                .collect(Collectors.groupingBy(line -> line.field().orElse("")));
        RainAfterDesk rain = new RainAfterDesk(office, books);
        return books.cases().stream()
                .map(item -> {
                    String name = item.field().name();
                    List<FieldYear.Seeding> seedings = seedings(
                            item.field(),
                            counting.getOrDefault(name, List.of()),
                            looks.getOrDefault(name, List.of()));
                    return new FieldYear(
                            item.field(),
                            item.status(),
                            seedings,
                            work(applied.getOrDefault(name, List.of())),
                            rain.after(item.field(), seedings),
                            notes(counting.getOrDefault(name, List.of())));
                })
                .toList();
    }

    private static Set<Long> undone(List<JournalEntry> journal) {
        Set<Long> undone = new HashSet<>();
        journal.forEach(entry -> entry.detail().undoes().ifPresent(undone::add));
        return undone;
    }

    private Instant start(int year) {
        return LocalDate.of(year, 1, 1).atStartOfDay(office.zone()).toInstant();
    }

    private List<FieldYear.Seeding> seedings(
            Field field, List<JournalEntry> lines, List<StandBook.StandCheck> looks) {
        List<JournalEntry> sown = lines.stream()
                .filter(entry -> entry.kind() == JournalEntry.Kind.DONE)
                .filter(entry -> entry.detail().operation().equals(Optional.of(Operation.SEED)))
                .toList();
        List<FieldYear.Seeding> seedings = new ArrayList<>();
        for (int i = 0; i < sown.size(); i++) {
            Instant at = sown.get(i).said().at();
            Instant next = i + 1 < sown.size() ? sown.get(i + 1).said().at() : Instant.MAX;
            seedings.add(new FieldYear.Seeding(
                    at,
                    day(at),
                    sown.get(i).detail().mix().orElse(field.wish().mixes().get(0)),
                    sown.get(i).said().by(),
                    looks.stream()
                            .filter(look -> !look.said().at().isBefore(at)
                                    && look.said().at().isBefore(next))
                            .toList()));
        }
        return seedings;
    }

    private List<FieldYear.Work> work(List<LedgerLine<Applied>> lines) {
        return lines.stream()
                .map(line -> new FieldYear.Work(
                        day(line.said().at()), line.entry(), line.said().by()))
                .toList();
    }

    private static List<String> notes(List<JournalEntry> lines) {
        return lines.stream().flatMap(entry -> entry.detail().note().stream()).toList();
    }

    private LocalDate day(Instant at) {
        return LocalDate.ofInstant(at, office.zone());
    }
}
