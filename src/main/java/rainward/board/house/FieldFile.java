package rainward.board.house;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rainward.farm.FieldCase;

/**
 * What is recorded about a field.
 *
 * @param item as it lies and stands
 * @param boundaryHa what its boundary holds, where it has one [ha]
 * @param history what was said and done, the newest first
 */
public record FieldFile(FieldCase item, Optional<Double> boundaryHa, List<Line> history) {

    public FieldFile {
        history = List.copyOf(history);
    }

    /**
     * A line of the history.
     *
     * @param at when it happened
     * @param by who said so
     * @param words what happened
     * @param note in the person's words
     * @param counts false where it was taken back
     */
    public record Line(
            Instant at, String by, String words, Optional<String> note, boolean counts) {}
}
