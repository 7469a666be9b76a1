package rainward.daemon.command;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.queue.problem.PlanItem;
import rainward.store.Books;
import rainward.store.journal.JournalEntry;
import rainward.store.journal.StandBook;
import rainward.store.journal.StandBook.Cause;
import rainward.store.journal.StandBook.Result;

/** Takes down what came up. */
@Command(
        name = "stand",
        description = {
            "Write down what came up on a seeded field: up, thin or failed.",
            "",
            "It is kept beside the chance that the order gave at seeding, so that `rainward skill`",
            "can tell how good those chances are. A thin or failed field comes back into the order",
            "from the first stage of its recipe, with what is still in season."
        })
public final class StandCommand extends OfficeCommand {

    @Parameters(
            index = "0",
            paramLabel = "FIELD",
            description = "The field, or the beginning of its name.")
    String field = "";

    @Parameters(index = "1", paramLabel = "RESULT", description = "up, thin or failed.")
    String result = "";

    @Option(
            names = "--cause",
            paramLabel = "CAUSE",
            description = "Why: dry, washed, crusted, eaten, weeds, seed or other.")
    @Nullable
    String cause;

    @Option(
            names = "--counted",
            paramLabel = "SHARE",
            description = "Plants counted, as a share of the live seed sown: 0.6 or 60%%.")
    @Nullable
    String counted;

    @Option(names = "--note", paramLabel = "TEXT", description = "Anything else worth keeping.")
    @Nullable
    String note;

    @Option(
            names = "--at",
            paramLabel = "TIME",
            description = "When somebody looked: HH:MM today, or YYYY-MM-DD HH:MM. Else now.")
    @Nullable
    String at;

    @Option(names = "--by", paramLabel = "NAME", description = "Who looked.")
    String by = "office";

    /**
     * What was written, as JSON shows it.
     *
     * @param field its name
     * @param result up, thin or failed
     * @param chanceAtSeeding that the order gave, if one was given
     * @param words for the person
     */
    record Answer(String field, String result, OptionalDouble chanceAtSeeding, String words) {}

    @Override
    int work(Office office) {
        String name = office.fieldNamed(field);
        Result found = word(result, Result.values(), "result");
        Answer answer = office.store().inTransaction(books -> write(books, office, name, found));
        show(answer, answer::words);
        return 0;
    }

    private Answer write(Books books, Office office, String name, Result found) {
        FieldStatus status = books.journal().statusOf(name);
        Instant seededAt = seededAt(name, status);
        OptionalDouble chance = chance(books, name, seededAt);
        StandBook.Finding finding =
                new StandBook.Finding(share(), chance, cause(found), Optional.ofNullable(note));
        books.stands()
                .add(new StandBook.StandCheck(
                        name, found, status.sownMix(), finding, said(office, seededAt)));
        String then = found == Result.UP ? "." : "; it is back in the order.";
        String given = chance.isPresent()
                ? " The order had given it " + Math.round(100 * chance.getAsDouble()) + " %."
                : " No order had given it a chance before it was seeded.";
        String word = found.name().toLowerCase(Locale.ROOT);
        return new Answer(name, word, chance, name + ": " + word + then + given);
    }

    private static Instant seededAt(String name, FieldStatus status) {
        boolean looked = status.state() == FieldState.SEEDED || status.state() == FieldState.UP;
        return status.stages().stream()
                .flatMap(stage -> stage.finishedAt().stream())
                .max(Comparator.naturalOrder())
                .filter(last -> looked)
                .orElseThrow(() -> Refusal.badInput(name + " is not recorded as seeded, so nothing"
                        + " can have come up: write `rainward done` for its seeding first."));
    }

    /** The chance in the last order that was given out before the seeding began. */
    private static OptionalDouble chance(Books books, String name, Instant seededAt) {
        Instant began = books.journal().statusOf(name).stages().stream()
                .filter(s -> s.finishedAt().filter(seededAt::equals).isPresent())
                .flatMap(s -> s.startedAt().stream())
                .findFirst()
                .orElse(seededAt);
        return books.plans().lastAt(began).stream()
                .flatMap(given -> given.plan().seedingOf(name).stream())
                .flatMap(item -> item.sowing().stream())
                .mapToDouble(PlanItem.Sowing::chance)
                .findFirst();
    }

    private OptionalDouble share() {
        if (counted == null) {
            return OptionalDouble.empty();
        }
        String plain = counted.strip();
        boolean percent = plain.endsWith("%");
        try {
            double number = Double.parseDouble(plain.replaceFirst("\\s*%$", ""));
            double share = percent ? number / 100 : number;
            if (share >= 0 && share <= 1) {
                return OptionalDouble.of(share);
            }
        } catch (NumberFormatException e) {
            // Told below, with what would be right.
        }
        throw Refusal.badInput(
                "'" + counted + "' is no share of the seed: write 0.6 or 60%, from 0 to 1.");
    }

    private Optional<Cause> cause(Result found) {
        if (cause != null && found == Result.UP) {
            throw Refusal.badInput("A stand that is up has no cause: leave --cause away, or write"
                    + " thin or failed.");
        }
        return Optional.ofNullable(cause).map(text -> word(text, Cause.values(), "cause"));
    }

    private JournalEntry.Said said(Office office, Instant seededAt) {
        Instant now = office.now();
        LocalDate today = LocalDate.ofInstant(now, office.zone());
        Instant looked = at == null ? now : StageCommand.moment(at, today, office.zone());
        if (looked.isBefore(seededAt) || looked.isAfter(now)) {
            throw Refusal.badInput("Nobody can have looked at " + at + ": give --at a time after"
                    + " the seeding that has passed.");
        }
        return new JournalEntry.Said(looked, now, by);
    }

    private static <E extends Enum<E>> E word(String text, E[] all, String what) {
        List<String> words = Arrays.stream(all)
                .map(one -> one.name().toLowerCase(Locale.ROOT))
                .toList();
        String meant = NameMatch.of(text, words)
                .unique()
                .orElseThrow(() -> Refusal.badInput("'" + text + "' is no " + what
                        + ": write one of " + String.join(", ", words) + "."));
        return all[words.indexOf(meant)];
    }
}
