package rainward.store.ledger;

import java.util.Optional;
import rainward.store.journal.JournalEntry;

/**
 * One line of the ledger.
 *
 * @param <T> what it is about
 * @param id order in which lines were written
 * @param field by the name it goes by now, if the line is about one
 * @param said when and by whom
 * @param entry as it was said
 */
public record LedgerLine<T>(long id, Optional<String> field, JournalEntry.Said said, T entry) {}
