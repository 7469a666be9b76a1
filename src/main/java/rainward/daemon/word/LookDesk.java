package rainward.daemon.word;

import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.farm.FieldCase;
import rainward.farm.FieldStatus;
import rainward.farm.Window;
import rainward.input.check.StandVerdict;
import rainward.queue.problem.PlanItem;
import rainward.store.Books;
import rainward.store.journal.JournalEntry;
import rainward.store.journal.StandBook;

/** Where people say what came up. */
public final class LookDesk {

    /** Half a day earlier or later a chance is still of the same rain; our choice. */
    private static final Duration NEAR = Duration.ofHours(12);

    private final Office office;

    public LookDesk(Office office) {
        this.office = office;
    }

    /**
     * What somebody saw.
     *
     * @param field the beginning of its name is enough
     * @param result up, thin or failed
     * @param seen more about it
     * @param at when, as typed; else now
     * @param by who looked
     */
    public record Said(String field, String result, Seen seen, Optional<String> at, String by) {}

    /**
     * More about a look, as typed.
     *
     * @param cause of a thin or failed stand
     * @param counted plants as a share of the live seed sown
     * @param note anything else
     */
    public record Seen(Optional<String> cause, Optional<String> counted, Optional<String> note) {}

    /**
     * What was written, as JSON shows it.
     *
     * @param field its name
     * @param result up, thin or failed
     * @param chanceAtSeeding that the order gave, if one was given
     * @param words for the person
     */
    public record Finding(
            String field, String result, OptionalDouble chanceAtSeeding, String words) {}

    /** Writes the look down; a thin or failed field comes back into the order. */
    public Finding take(Books books, Said said) {
        String name = office.fieldNamed(said.field());
        StandVerdict found = word(said.result(), StandVerdict.values(), "result");
        FieldStatus status = books.journal().statusOf(name);
        Instant seededAt = seededAt(name, status);
        OptionalDouble chance = chance(books, name, status, seededAt);
        StandBook.Finding finding = new StandBook.Finding(
                said.seen().counted().map(LookDesk::share).orElse(OptionalDouble.empty()),
                chance,
                cause(said, found),
                said.seen().note());
        books.stands()
                .add(new StandBook.StandCheck(
                        name, found, status.sownMix(), finding, moment(said, seededAt)));
        String word = found.name().toLowerCase(Locale.ROOT);
        return new Finding(name, word, chance, words(name, found, chance));
    }

    private static String words(String name, StandVerdict found, OptionalDouble chance) {
        String then = found == StandVerdict.UP ? "." : "; it is back in the order.";
        String given = chance.isPresent()
                ? " The order had given it " + Math.round(100 * chance.getAsDouble()) + " %."
                : " No order had given this seeding a chance: of this mix, within half a day.";
        return name + ": " + found.name().toLowerCase(Locale.ROOT) + then + given;
    }

    private static Instant seededAt(String name, FieldStatus status) {
        return status.seededAt()
                .orElseThrow(() -> Refusal.badInput(name + " is not recorded as seeded, so nothing"
                        + " can have come up: write `rainward done` for its seeding first."));
    }

    /**
     * The chance in the last order that was given out before the seeding began: a chance of that
     * mix, for an hour near the one in which it went in. Any other chance was of another seeding.
     */
    private static OptionalDouble chance(
            Books books, String name, FieldStatus status, Instant seededAt) {
        String mix = books.cases().stream()
                .filter(item -> item.field().name().equals(name))
                .map(FieldCase::mix)
                .findFirst()
                .orElse("");
        Instant began = status.stages().stream()
                .filter(s -> s.finishedAt().filter(seededAt::equals).isPresent())
                .flatMap(s -> s.startedAt().stream())
                .findFirst()
                .orElse(seededAt);
        return books.plans().lastAt(began).stream()
                .flatMap(given -> given.plan().items().stream())
                .filter(item -> item.place().field().equals(name))
                .filter(item -> near(item.work(), began))
                .flatMap(item -> item.sowing().stream())
                .filter(sowing -> sowing.mix().equals(mix))
                .mapToDouble(PlanItem.Sowing::chance)
                .findFirst();
    }

    private static boolean near(Window planned, Instant began) {
        return began.isAfter(planned.from().minus(NEAR))
                && began.isBefore(planned.to().plus(NEAR));
    }

    private static OptionalDouble share(String counted) {
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

    private static Optional<StandVerdict.Cause> cause(Said said, StandVerdict found) {
        if (said.seen().cause().isPresent() && found == StandVerdict.UP) {
            throw Refusal.badInput("A stand that is up has no cause: leave --cause away, or write"
                    + " thin or failed.");
        }
        return said.seen().cause().map(text -> word(text, StandVerdict.Cause.values(), "cause"));
    }

    private JournalEntry.Said moment(Said said, Instant seededAt) {
        ZonedDateTime now = office.now().atZone(office.zone());
        Instant looked = Moments.of(said.at(), now);
        if (looked.isBefore(seededAt) || looked.isAfter(now.toInstant())) {
            throw Refusal.badInput("Nobody can have looked at " + said.at().orElse("")
                    + ": give --at a time after the seeding that has passed.");
        }
        return new JournalEntry.Said(looked, now.toInstant(), said.by());
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
