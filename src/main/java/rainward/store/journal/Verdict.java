package rainward.store.journal;

import java.util.List;

/** What became of something that a person told the journal. */
public sealed interface Verdict {

    /** One sentence for the person. */
    String words();

    /**
     * It stands in the journal now.
     *
     * @param words for the person
     * @param entries the lines written
     */
    record Written(String words, List<Long> entries) implements Verdict {
        public Written {
            entries = List.copyOf(entries);
        }
    }

    /**
     * It stood there before; nothing was written.
     *
     * @param words for the person
     */
    record AlreadySo(String words) implements Verdict {}

    /**
     * It cannot be; nothing was written.
     *
     * @param words for the person, with what to do
     */
    record Refused(String words) implements Verdict {}
}
