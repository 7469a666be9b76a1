package rainward.daemon.word;

import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.store.Books;
import rainward.store.journal.JournalEntry;
import rainward.store.journal.JournalEntry.Kind;
import rainward.store.journal.StageJournal;

/** Where people say what becomes of a field in the order. */
public final class FieldDesk {

    private static final int LONGEST_NOTE = 2000;

    private final Office office;

    public FieldDesk(Office office) {
        this.office = office;
    }

    /** What may be said of a field. */
    public enum Verb {
        PIN,
        HOLD,
        DROP,
        FREE,
        NOTE
    }

    /**
     * A word about a field.
     *
     * @param verb what is said
     * @param field the beginning of its name is enough
     * @param text end of a hold as typed, or a note; else empty
     * @param by who says so
     */
    public record Said(Verb verb, String field, String text, String by) {}

    /** Writes the word down, unless it stands so. */
    public Answer take(Books books, Said said) {
        String name = office.fieldNamed(said.field());
        ZonedDateTime now = office.now().atZone(office.zone());
        JournalEntry.Said line = new JournalEntry.Said(now.toInstant(), now.toInstant(), said.by());
        StageJournal journal = books.journal();
        Known known = new Known(name, journal.statusOf(name), now, line);
        return switch (said.verb()) {
            case PIN -> pin(journal, known);
            case HOLD -> hold(journal, known, said.text());
            case DROP -> drop(journal, known);
            case FREE -> free(journal, known);
            case NOTE -> note(journal, known, said.text());
        };
    }

    /**
     * A field as it stands, and a line to be written about it.
     *
     * @param name of the field
     * @param status before
     * @param now and in the zone of the farm
     * @param said when and by whom
     */
    private record Known(
            String name, FieldStatus status, ZonedDateTime now, JournalEntry.Said said) {

        /** True where the field is left out of the order for now. */
        boolean held() {
            return status.heldAt(now.toInstant()).isPresent();
        }

        boolean dropped() {
            return status.state() == FieldState.DROPPED;
        }

        void mustWait(String verb) {
            if (!status.waiting()) {
                throw Refusal.badInput(name + " is "
                        + status.state().words()
                        + " and not in the order, so it cannot be " + verb + "."
                        + (dropped() ? " Take it back with `rainward free` first." : ""));
            }
        }
    }

    private static Answer pin(StageJournal journal, Known known) {
        known.mustWait("pinned");
        if (known.status().pinnedFirst()) {
            return Answer.alreadySo(known.name() + " is pinned already.");
        }
        journal.say(known.name(), Kind.PINNED, known.said());
        return Answer.written(known.name() + " goes before all others now.");
    }

    private Answer hold(StageJournal journal, Known known, String until) {
        known.mustWait("held");
        Instant end = end(until, known.now());
        if (!end.isAfter(known.now().toInstant())) {
            throw Refusal.badInput("A hold until " + until + " is over already: give a day"
                    + " that is still to come.");
        }
        String shown = office.dayClock().near(end, office.now());
        if (known.status().heldUntil().filter(end::equals).isPresent()) {
            return Answer.alreadySo(known.name() + " is held until " + shown + " already.");
        }
        journal.hold(known.name(), end, known.said());
        return Answer.written(known.name() + " is left out until " + shown + ".");
    }

    /** A day begins at its midnight. */
    private static Instant end(String until, ZonedDateTime now) {
        String text =
                until.strip().matches("\\d{4}-\\d{2}-\\d{2}") ? until.strip() + " 00:00" : until;
        return Moments.of(text, now.toLocalDate(), now.getZone());
    }

    private static Answer drop(StageJournal journal, Known known) {
        if (known.dropped()) {
            return Answer.alreadySo(known.name() + " is dropped already.");
        }
        journal.say(known.name(), Kind.DROPPED, known.said());
        return Answer.written(known.name() + " is out of the order for this season.");
    }

    private static Answer free(StageJournal journal, Known known) {
        List<Kind> lines = new ArrayList<>();
        if (known.status().pinnedFirst()) {
            lines.add(Kind.UNPINNED);
        }
        if (known.held()) {
            lines.add(Kind.FREED);
        }
        if (known.dropped()) {
            lines.add(Kind.TAKEN_BACK);
        }
        lines.forEach(kind -> journal.say(known.name(), kind, known.said()));
        return lines.isEmpty()
                ? Answer.alreadySo(known.name() + " is neither pinned, held nor dropped.")
                : Answer.written(known.name() + " is free: the order decides about it again.");
    }

    private static Answer note(StageJournal journal, Known known, String text) {
        String note = text.strip();
        if (note.isEmpty() || note.length() > LONGEST_NOTE) {
            throw Refusal.badInput("A note about " + known.name() + " has " + note.length()
                    + " characters: write 1 to " + LONGEST_NOTE + ".");
        }
        journal.note(known.name(), note, known.said());
        return Answer.written("Noted for " + known.name() + ".");
    }
}
