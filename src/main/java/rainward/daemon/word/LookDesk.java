package rainward.daemon.word;

import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.farm.FieldCase;
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
        StandVerdict found = NameMatch.among(StandVerdict.values(), said.result(), "result");
        FieldCase item = books.cases().stream()
                .filter(one -> one.field().name().equals(name))
                .findFirst()
                .orElseThrow();
        Instant sownAt = sownAt(item);
        OptionalDouble chance = chance(books, item, sownAt);
        StandBook.Finding finding = new StandBook.Finding(
                said.seen().counted().map(LookDesk::share).orElse(OptionalDouble.empty()),
                chance,
                cause(said, found),
                said.seen().note());
        books.stands()
                .add(new StandBook.StandCheck(
                        name, found, item.status().sownMix(), finding, moment(said, sownAt)));
        String word = found.name().toLowerCase(Locale.ROOT);
        return new Finding(name, word, chance, words(name, found, chance));
    }

    private static String words(String name, StandVerdict found, OptionalDouble chance) {
        String then = found == StandVerdict.UP ? "." : "; it is back in the order.";
        String given = chance.isPresent()
                ? " The order had given it " + Math.round(100 * chance.getAsDouble()) + " %."
                : " The chance it went in with is not known: no order had this mix on this field"
                        + " within half a day.";
        return name + ": " + found.name().toLowerCase(Locale.ROOT) + then + given;
    }

    private Instant sownAt(FieldCase item) {
        return office.roster()
                .sownAt(item)
                .orElseThrow(() -> Refusal.badInput(item.field().name()
                        + " is not recorded as seeded, so nothing can have come up: write"
                        + " `rainward done` for its seeding first."));
    }

    /**
     * The chance in the last order that was given out before the seeding began: a chance of that
     * mix, for an hour near the one in which it went in. Any other chance was of another seeding.
     */
    private static OptionalDouble chance(Books books, FieldCase item, Instant sownAt) {
        Instant began = item.status().stages().stream()
                .filter(s -> s.finishedAt().filter(sownAt::equals).isPresent())
                .flatMap(s -> s.startedAt().stream())
                .findFirst()
                .orElse(sownAt);
        return books.plans().lastAt(began).stream()
                .flatMap(given -> given.plan().items().stream())
                .filter(planned -> planned.place().field().equals(item.field().name()))
                .filter(planned -> near(planned.work(), began))
                .flatMap(planned -> planned.sowing().stream())
                .filter(sowing -> sowing.mix().equals(item.mix()))
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
        return said.seen()
                .cause()
                .map(text -> NameMatch.among(StandVerdict.Cause.values(), text, "cause"));
    }

    private JournalEntry.Said moment(Said said, Instant sownAt) {
        ZonedDateTime now = office.now().atZone(office.zone());
        Instant looked = Moments.of(said.at(), now);
        if (looked.isBefore(sownAt) || looked.isAfter(now.toInstant())) {
            throw Refusal.badInput("Nobody can have looked at " + said.at().orElse("")
                    + ": give --at a time after the seeding that has passed.");
        }
        return new JournalEntry.Said(looked, now.toInstant(), said.by());
    }
}
