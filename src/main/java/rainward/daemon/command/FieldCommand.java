package rainward.daemon.command;

import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.store.journal.JournalEntry;
import rainward.store.journal.JournalEntry.Kind;
import rainward.store.journal.StageJournal;

/** What a person says about a field's place in the order. */
public abstract class FieldCommand extends OfficeCommand {

    @Parameters(
            index = "0",
            paramLabel = "FIELD",
            description = "The field, or the beginning of its name.")
    String field = "";

    @Option(names = "--by", paramLabel = "NAME", description = "Who says so.")
    String by = "office";

    /**
     * What came of it, as JSON shows it.
     *
     * @param outcome written or already so
     * @param words for the person
     */
    record Answer(String outcome, String words) {

        static Answer written(String words) {
            return new Answer("written", words);
        }

        static Answer alreadySo(String words) {
            return new Answer("already so", words);
        }
    }

    /**
     * A field as it stands, and a line to be written about it.
     *
     * @param name of the field
     * @param status before
     * @param now and in the zone of the farm
     * @param said when and by whom
     */
    record Known(String name, FieldStatus status, ZonedDateTime now, JournalEntry.Said said) {

        /** True where the field is left out of the order for now. */
        boolean held() {
            return status.heldUntil()
                    .filter(until -> until.isAfter(now.toInstant()))
                    .isPresent();
        }

        boolean dropped() {
            return status.state() == FieldState.DROPPED;
        }

        void mustWait(String verb) {
            if (!status.waiting()) {
                throw Refusal.badInput(name + " is "
                        + status.state().name().toLowerCase(Locale.ROOT)
                        + " and not in the order, so it cannot be " + verb + "."
                        + (dropped() ? " Take it back with `rainward free` first." : ""));
            }
        }
    }

    /** Writes the word down, unless it stands so. */
    abstract Answer write(StageJournal journal, Known known);

    @Override
    int work(Office office) {
        String name = office.fieldNamed(field);
        ZonedDateTime now = office.now().atZone(office.zone());
        JournalEntry.Said said = new JournalEntry.Said(now.toInstant(), now.toInstant(), by);
        Answer answer = office.store()
                .inTransaction(books -> write(
                        books.journal(),
                        new Known(name, books.journal().statusOf(name), now, said)));
        show(answer, answer::words);
        return 0;
    }

    /** Puts a field before all others. */
    @Command(
            name = "pin",
            description = {
                "Put a field before all others in the order, whatever the weather says.",
                "",
                "Take it back with `rainward free FIELD`. Safe to repeat."
            })
    public static final class Pin extends FieldCommand {

        @Override
        Answer write(StageJournal journal, Known known) {
            known.mustWait("pinned");
            if (known.status().pinnedFirst()) {
                return Answer.alreadySo(known.name() + " is pinned already.");
            }
            journal.say(known.name(), Kind.PINNED, known.said());
            return Answer.written(known.name() + " goes before all others now.");
        }
    }

    /** Leaves a field out for a while. */
    @Command(
            name = "hold",
            description = {
                "Leave a field out of the order until a day or an hour.",
                "",
                "Take it back with `rainward free FIELD`; holding it again moves the end."
            })
    public static final class Hold extends FieldCommand {

        private static final DateTimeFormatter WHEN =
                DateTimeFormatter.ofPattern("EEE d MMM yyyy HH:mm", Locale.US);

        @Parameters(
                index = "1",
                paramLabel = "UNTIL",
                description = "The day it may be worked again, YYYY-MM-DD, or with HH:MM behind.")
        String until = "";

        @Override
        Answer write(StageJournal journal, Known known) {
            known.mustWait("held");
            Instant end = end(known.now());
            if (!end.isAfter(known.now().toInstant())) {
                throw Refusal.badInput("A hold until " + until + " is over already: give a day"
                        + " that is still to come.");
            }
            String shown = WHEN.format(end.atZone(known.now().getZone()));
            if (known.status().heldUntil().filter(end::equals).isPresent()) {
                return Answer.alreadySo(known.name() + " is held until " + shown + " already.");
            }
            journal.hold(known.name(), end, known.said());
            return Answer.written(known.name() + " is left out until " + shown + ".");
        }

        /** A day begins at its midnight. */
        private Instant end(ZonedDateTime now) {
            String text = until.strip().matches("\\d{4}-\\d{2}-\\d{2}")
                    ? until.strip() + " 00:00"
                    : until;
            return StageCommand.moment(text, now.toLocalDate(), now.getZone());
        }
    }

    /** Takes a field out of the season. */
    @Command(
            name = "drop",
            description = {
                "Take a field out of the order for the season.",
                "",
                "What is recorded about it stays. Take it back with `rainward free FIELD`."
            })
    public static final class Drop extends FieldCommand {

        @Override
        Answer write(StageJournal journal, Known known) {
            if (known.dropped()) {
                return Answer.alreadySo(known.name() + " is dropped already.");
            }
            journal.say(known.name(), Kind.DROPPED, known.said());
            return Answer.written(known.name() + " is out of the order for this season.");
        }
    }

    /** Takes pin, hold and drop back. */
    @Command(
            name = "free",
            description = {
                "Take back a pin, a hold or a drop; the order decides about the field again.",
                "",
                "Safe to repeat."
            })
    public static final class Free extends FieldCommand {

        @Override
        Answer write(StageJournal journal, Known known) {
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
    }
}
