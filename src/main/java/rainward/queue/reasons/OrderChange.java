package rainward.queue.reasons;

/**
 * A field whose place differs from the order given out before, with what it gains.
 *
 * @param field its name
 * @param kind what happened to it
 * @param gainHa what it earns more than if the last order had been kept [ha of full stand]; below
 *     zero where it makes room for others
 * @param words for the user
 */
public record OrderChange(String field, Kind kind, double gainHa, String words) {

    /** What happened to a field. */
    public enum Kind {
        /** Another machine, another day or hour, other work before it. */
        MOVED,
        /** It was not in the last order. */
        NEW,
        /** It was in the last order and is no more. */
        GONE
    }
}
