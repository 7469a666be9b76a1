package rainward.store.journal;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import rainward.farm.Operation;

/**
 * One line of the journal of a field; lines are never rewritten, a correction is a line of its own.
 *
 * @param id order in which lines were written
 * @param field its name
 * @param kind what it says
 * @param said when and by whom
 * @param detail what belongs to the kind
 */
public record JournalEntry(long id, String field, Kind kind, Said said, Detail detail) {

    /** What a line says. */
    public enum Kind {
        /** Work on a stage began. */
        STARTED,
        /** A stage was finished. */
        DONE,
        /** A stage is left out on purpose, this time. */
        PASSED_OVER,
        /** An earlier line does not count. */
        UNDONE,
        HELD,
        FREED,
        PINNED,
        UNPINNED,
        DROPPED,
        TAKEN_BACK,
        STAND_UP,
        STAND_THIN,
        STAND_FAILED,
        /** Somebody dug: it crumbles at seed depth. */
        SOIL_DRY,
        /** Somebody dug: it holds a ball at seed depth. */
        SOIL_MOIST,
        /** Somebody dug: it glistens or sticks at seed depth. */
        SOIL_WET,
        /** Words about the field that change nothing else. */
        NOTED
    }

    /**
     * When and by whom.
     *
     * @param at when it happened
     * @param recordedAt when it was written
     * @param by who said so
     */
    public record Said(Instant at, Instant recordedAt, String by) {}

    /**
     * What belongs to a line.
     *
     * @param stage its name in the recipe
     * @param operation what the stage does, so that a later change of the recipe changes no past
     * @param machine which did it
     * @param mix what went into the ground
     * @param heldUntil end of a hold
     * @param undoes the line that does not count
     * @param note in the person's words
     */
    public record Detail(
            Optional<String> stage,
            Optional<Operation> operation,
            Optional<String> machine,
            Optional<String> mix,
            Optional<Instant> heldUntil,
            OptionalLong undoes,
            Optional<String> note) {

        /** Nothing more to say. */
        public static final Detail NONE = new Detail(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalLong.empty(),
                Optional.empty());

        /** The same stage, said not to count. */
        Detail undoing(long id) {
            return new Detail(
                    stage,
                    operation,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    OptionalLong.of(id),
                    Optional.empty());
        }

        /** In the person's words. */
        static Detail noting(String note) {
            return new Detail(
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    OptionalLong.empty(),
                    Optional.of(note));
        }

        /** A hold that ends then. */
        Detail until(Instant end) {
            return new Detail(stage, operation, machine, mix, Optional.of(end), undoes, note);
        }
    }

    boolean concerns(String stage) {
        return detail.stage().filter(stage::equals).isPresent();
    }
}
