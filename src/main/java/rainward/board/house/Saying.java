package rainward.board.house;

import java.util.Map;
import java.util.Optional;

/**
 * What a person says on a page.
 *
 * @param key drawn with the form; the same word told twice has the same key
 * @param by who says so
 * @param act what is said
 * @param parts of it, as typed, by the name of the box; boxes left empty are missing
 */
public record Saying(String key, String by, Act act, Map<String, String> parts) {

    public Saying {
        parts = Map.copyOf(parts);
    }

    /** What can be said. */
    public enum Act {
        START,
        DONE,
        UNDO,
        PIN,
        HOLD,
        DROP,
        FREE,
        NOTE,
        SOIL,
        LOOK,
        RAIN,
        COUNT,
        RECEIVE,
        REPLAN,
        FIELD,
        MAIL_AGAIN,
        MAIL_OUT,
        SETTINGS,
        ENTRY,
        ENTRY_OUT;

        /** Acts that only the lead may do: they reach beyond the day's work. */
        public boolean leadOnly() {
            return switch (this) {
                case DROP, FIELD, MAIL_AGAIN, MAIL_OUT, SETTINGS, ENTRY, ENTRY_OUT -> true;
                case START, DONE, UNDO, PIN, HOLD, FREE, NOTE -> false;
                case SOIL, LOOK, RAIN, COUNT, RECEIVE, REPLAN -> false;
            };
        }
    }

    /** A part as typed, if there is one. */
    public Optional<String> part(String name) {
        return Optional.ofNullable(parts.get(name)).filter(text -> !text.isBlank());
    }
}
