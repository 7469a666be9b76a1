package rainward.daemon.board;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rainward.board.house.FieldFile;
import rainward.brief.words.Reader;
import rainward.daemon.settings.Spelled;
import rainward.store.journal.JournalEntry;
import rainward.store.journal.StandBook;
import rainward.store.ledger.Bounded;
import rainward.store.ledger.LedgerLine;
import rainward.store.ledger.Renamed;

/** The journal of a field in words. */
final class History {

    private final Reader reader;

    History(Reader reader) {
        this.reader = reader;
    }

    /**
     * What is written of a field.
     *
     * @param entries of the journal
     * @param names that it got
     * @param boundaries that it got
     * @param looks at what came up
     */
    record Written(
            List<JournalEntry> entries,
            List<LedgerLine<Renamed>> names,
            List<LedgerLine<Bounded>> boundaries,
            List<StandBook.StandCheck> looks) {}

    /** The newest first, by when it was written down; what was taken back is shown so. */
    List<FieldFile.Line> of(Written written) {
        List<JournalEntry> entries = written.entries();
        Set<Long> undone = new HashSet<>();
        entries.forEach(entry -> entry.detail().undoes().ifPresent(undone::add));
        List<Dated> lines = new ArrayList<>();
        for (JournalEntry entry : entries) {
            boolean counts = !undone.contains(entry.id());
            String words = words(entry) + seen(entry, written.looks());
            lines.add(Dated.of(entry.said(), words, note(entry), counts));
        }
        for (LedgerLine<Renamed> name : written.names()) {
            String words = "called " + name.entry().now() + ", before that "
                    + name.entry().was();
            lines.add(Dated.of(name.said(), words, Optional.empty(), true));
        }
        for (LedgerLine<Bounded> line : written.boundaries()) {
            lines.add(Dated.of(line.said(), words(line.entry()), Optional.empty(), true));
        }
        Collections.reverse(lines);
        return lines.stream()
                .sorted(Comparator.comparing(Dated::at).reversed())
                .map(Dated::line)
                .toList();
    }

    /** A line and when it was written down. */
    private record Dated(Instant at, FieldFile.Line line) {

        static Dated of(
                JournalEntry.Said said, String words, Optional<String> note, boolean counts) {
            return new Dated(
                    said.recordedAt(),
                    new FieldFile.Line(said.at(), said.by(), words, note, counts));
        }
    }

    private static Optional<String> note(JournalEntry entry) {
        return entry.detail().note();
    }

    /** Cause and count of a look, where they were told. */
    private static String seen(JournalEntry entry, List<StandBook.StandCheck> looks) {
        return looks.stream()
                .filter(look -> look.said().equals(entry.said()))
                .map(StandBook.StandCheck::finding)
                .map(found -> found.cause().map(c -> ", " + Spelled.spaced(c)).orElse("")
                        + (found.countedFraction().isPresent()
                                ? ", " + Reader.percent(found.countedFraction().getAsDouble())
                                        + " of the seed counted"
                                : ""))
                .findFirst()
                .orElse("");
    }

    private String words(Bounded entry) {
        String now = reader.units().area(entry.nowHa());
        String was = reader.units().area(entry.wasHa());
        return (entry.was().isPresent() ? "another boundary: " : "a boundary: ") + now
                + " to be seeded, " + was + " before";
    }

    private String words(JournalEntry entry) {
        String stage = entry.detail().stage().orElse("");
        String machine = entry.detail().machine().map(m -> ", " + m).orElse("");
        String mix = entry.detail().mix().map(m -> ", " + m).orElse("");
        return switch (entry.kind()) {
            case STARTED -> stage + " started" + machine;
            case DONE -> stage + " done" + machine + mix;
            case PASSED_OVER -> stage + " left out on purpose";
            case UNDONE -> (stage.isEmpty() ? "a word" : stage) + " taken back";
            case HELD ->
                "left out"
                        + entry.detail()
                                .heldUntil()
                                .map(until -> " until " + reader.clock().dateTime(until))
                                .orElse("");
            case FREED -> "no longer left out";
            case PINNED -> "put first";
            case UNPINNED -> "no longer put first";
            case DROPPED -> "dropped for the season";
            case TAKEN_BACK -> "taken back into the order";
            case STAND_UP -> "looked at: up" + mix;
            case STAND_THIN -> "looked at: thin" + mix;
            case STAND_FAILED -> "looked at: failed" + mix;
            case SOIL_DRY -> "dug: dry at seed depth";
            case SOIL_MOIST -> "dug: moist at seed depth";
            case SOIL_WET -> "dug: wet at seed depth";
            case NOTED -> "note";
        };
    }
}
