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
import rainward.farm.DayClock;
import rainward.store.journal.JournalEntry;
import rainward.store.ledger.LedgerLine;
import rainward.store.ledger.Renamed;

/** The journal of a field in words. */
final class History {

    private final DayClock clock;

    History(DayClock clock) {
        this.clock = clock;
    }

    /** The newest first, by when it was written down; what was taken back is shown so. */
    List<FieldFile.Line> of(List<JournalEntry> entries, List<LedgerLine<Renamed>> names) {
        Set<Long> undone = new HashSet<>();
        entries.forEach(entry -> entry.detail().undoes().ifPresent(undone::add));
        List<Written> lines = new ArrayList<>();
        for (JournalEntry entry : entries) {
            boolean counts = !undone.contains(entry.id());
            lines.add(Written.of(entry.said(), words(entry), note(entry), counts));
        }
        for (LedgerLine<Renamed> name : names) {
            String words = "called " + name.entry().now() + ", before that "
                    + name.entry().was();
            lines.add(Written.of(name.said(), words, Optional.empty(), true));
        }
        Collections.reverse(lines);
        return lines.stream()
                .sorted(Comparator.comparing(Written::at).reversed())
                .map(Written::line)
                .toList();
    }

    /** A line and when it was written down. */
    private record Written(Instant at, FieldFile.Line line) {

        static Written of(
                JournalEntry.Said said, String words, Optional<String> note, boolean counts) {
            return new Written(
                    said.recordedAt(),
                    new FieldFile.Line(said.at(), said.by(), words, note, counts));
        }
    }

    private static Optional<String> note(JournalEntry entry) {
        return entry.detail().note();
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
                                .map(until -> " until " + clock.dateTime(until))
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
