package rainward.daemon.word;

import rainward.store.journal.Verdict;

/**
 * What came of a word, as JSON shows it.
 *
 * @param outcome written, already so or refused
 * @param words for the person
 */
public record Answer(String outcome, String words) {

    private static final String REFUSED = "refused";

    static Answer written(String words) {
        return new Answer("written", words);
    }

    static Answer alreadySo(String words) {
        return new Answer("already so", words);
    }

    static Answer of(Verdict verdict) {
        return verdict instanceof Verdict.Written
                ? written(verdict.words())
                : verdict instanceof Verdict.AlreadySo
                        ? alreadySo(verdict.words())
                        : new Answer(REFUSED, verdict.words());
    }

    /** The same with more words behind. */
    Answer with(String more) {
        return new Answer(outcome, words + more);
    }

    /** True where nothing was written because it cannot be. */
    public boolean refused() {
        return outcome.equals(REFUSED);
    }
}
