package rainward.daemon.word;

import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.Optional;
import rainward.cycle.ground.SoilWord;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Spelled;
import rainward.soil.SoilState.Word;
import rainward.store.Books;
import rainward.store.journal.JournalEntry;

/** Where people who dug say what they saw. */
public final class SoilDesk {

    private final Office office;

    public SoilDesk(Office office) {
        this.office = office;
    }

    /**
     * What somebody who dug says.
     *
     * @param field the beginning of its name is enough
     * @param word dry, moist or wet; empty: the last word is taken back
     * @param at when, as typed; else now
     * @param by who dug
     */
    public record Said(String field, Optional<String> word, Optional<String> at, String by) {}

    /**
     * What came of it, as JSON shows it.
     *
     * @param field its name
     * @param outcome written or already so
     * @param words for the person
     */
    public record Told(String field, String outcome, String words) {}

    /** Writes the word down, or takes the last one back. */
    public Told take(Books books, Said said) {
        String name = office.fieldNamed(said.field());
        return said.word()
                .map(text -> write(
                        books,
                        name,
                        NameMatch.among(Word.values(), text, "word for soil here"),
                        said))
                .orElseGet(() -> takeBack(books, name, said.by()));
    }

    private Told write(Books books, String name, Word seen, Said said) {
        JournalEntry.Said line = line(said);
        books.soilWords().say(name, seen, line);
        return new Told(
                name,
                "written",
                name + ": " + Spelled.dashed(seen) + " at seed depth, " + shown(line.at()) + ".");
    }

    private Told takeBack(Books books, String name, String by) {
        Instant now = office.now();
        Optional<SoilWord> gone = books.soilWords().undo(name, new JournalEntry.Said(now, now, by));
        return gone.map(last -> new Told(
                        name,
                        "written",
                        name + ": " + Spelled.dashed(last.word()) + " at seed depth, "
                                + shown(last.at()) + ", does not count any more."))
                .orElseGet(() ->
                        new Told(name, "already so", name + ": nobody's word on its soil counts."));
    }

    private JournalEntry.Said line(Said said) {
        ZonedDateTime now = office.now().atZone(office.zone());
        Instant dug = Moments.of(said.at(), now);
        if (dug.isAfter(now.toInstant())) {
            throw Refusal.badInput("Nobody can have dug at " + said.at().orElse("")
                    + ", which is still to come: give --at a time that has passed.");
        }
        Instant reckonedFrom = now.toInstant().minus(office.settings().soil().runUp());
        if (dug.isBefore(reckonedFrom)) {
            throw Refusal.badInput("A word of " + said.at().orElse("")
                    + " tells nothing any more: the soil is reckoned from "
                    + shown(reckonedFrom) + " on.");
        }
        return new JournalEntry.Said(dug, now.toInstant(), said.by());
    }

    private String shown(Instant instant) {
        return office.dayClock().near(instant, office.now());
    }
}
