package rainward.store.journal;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toList;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import rainward.cycle.ground.SoilWord;
import rainward.soil.SoilState.Word;

/** What people who dug said of the soil at seed depth; lines of the journal, like all they say. */
public final class SoilBook {

    private final JournalTable table;

    public SoilBook(Handle handle) {
        this.table = new JournalTable(handle);
    }

    /** Every word that counts, by field, in order of time. */
    public Map<String, List<SoilWord>> all() {
        return JournalReading.counting(table.all()).stream()
                .filter(entry -> wordOf(entry).isPresent())
                .sorted(Comparator.comparing(entry -> entry.said().at()))
                .collect(groupingBy(JournalEntry::field, mapping(SoilBook::told, toList())));
    }

    /** Writes a word down. */
    public long say(String field, Word word, JournalEntry.Said said) {
        JournalEntry.Kind kind = switch (word) {
            case DRY -> JournalEntry.Kind.SOIL_DRY;
            case MOIST -> JournalEntry.Kind.SOIL_MOIST;
            case WET -> JournalEntry.Kind.SOIL_WET;
        };
        return table.append(field, kind, said, JournalEntry.Detail.NONE);
    }

    /**
     * Takes back the word that was written last and still counts.
     *
     * @return the word that does not count any more; empty where there was none
     */
    public Optional<SoilWord> undo(String field, JournalEntry.Said said) {
        Optional<JournalEntry> last = JournalReading.counting(table.of(field)).stream()
                .filter(entry -> wordOf(entry).isPresent())
                .reduce((first, second) -> second);
        last.ifPresent(entry -> table.append(
                field,
                JournalEntry.Kind.UNDONE,
                said,
                JournalEntry.Detail.NONE.undoing(entry.id())));
        return last.map(SoilBook::told);
    }

    private static SoilWord told(JournalEntry entry) {
        return new SoilWord(entry.said().at(), wordOf(entry).orElseThrow());
    }

    private static Optional<Word> wordOf(JournalEntry entry) {
        return switch (entry.kind()) {
            case SOIL_DRY -> Optional.of(Word.DRY);
            case SOIL_MOIST -> Optional.of(Word.MOIST);
            case SOIL_WET -> Optional.of(Word.WET);
            default -> Optional.empty();
        };
    }
}
