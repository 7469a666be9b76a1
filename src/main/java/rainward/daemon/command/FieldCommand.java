package rainward.daemon.command;

import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

import rainward.daemon.office.Office;
import rainward.daemon.word.Answer;
import rainward.daemon.word.FieldDesk;

/** What a person says about a field's place in the order. */
public abstract class FieldCommand extends OfficeCommand {

    @Parameters(
            index = "0",
            paramLabel = "FIELD",
            description = "The field, or the beginning of its name.")
    String field = "";

    @Option(names = "--by", paramLabel = "NAME", description = "Who says so.")
    String by = "office";

    /** What is said of the field. */
    abstract FieldDesk.Verb verb();

    /** What belongs to the word: the end of a hold. */
    String text() {
        return "";
    }

    @Override
    protected int work(Office office) {
        FieldDesk.Said said = new FieldDesk.Said(verb(), field, text(), by);
        Answer answer =
                office.store().inTransaction(books -> new FieldDesk(office).take(books, said));
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
        FieldDesk.Verb verb() {
            return FieldDesk.Verb.PIN;
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

        @Parameters(
                index = "1",
                paramLabel = "UNTIL",
                description = "The day it may be worked again, YYYY-MM-DD, or with HH:MM behind.")
        String until = "";

        @Override
        FieldDesk.Verb verb() {
            return FieldDesk.Verb.HOLD;
        }

        @Override
        String text() {
            return until;
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
        FieldDesk.Verb verb() {
            return FieldDesk.Verb.DROP;
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
        FieldDesk.Verb verb() {
            return FieldDesk.Verb.FREE;
        }
    }

    /** Keeps words about a field. */
    @Command(
            name = "note",
            description = {
                "Write down anything worth keeping about a field.",
                "",
                "It changes nothing in the order; the board shows it with the field's history."
            })
    public static final class Note extends FieldCommand {

        @Parameters(index = "1", paramLabel = "TEXT", description = "What is worth keeping.")
        String note = "";

        @Override
        FieldDesk.Verb verb() {
            return FieldDesk.Verb.NOTE;
        }

        @Override
        String text() {
            return note;
        }
    }
}
