package rainward.daemon.word;

import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.yard.UseDesk;
import rainward.farm.Field;
import rainward.farm.Recipe;
import rainward.farm.Stage;
import rainward.store.Books;
import rainward.store.journal.StageWord;
import rainward.store.journal.Verdict;

/** Where stages are reported: begun, done, taken back. */
public final class StageDesk {

    private final Office office;

    public StageDesk(Office office) {
        this.office = office;
    }

    /** What may be said of a stage. */
    public enum Verb {
        START,
        DONE,
        UNDO
    }

    /**
     * A word about a stage.
     *
     * @param verb what is said
     * @param field the beginning of its name is enough
     * @param stage the same
     * @param at time as typed; else now
     * @param by who says so
     * @param means with what it was done
     */
    public record Said(
            Verb verb,
            String field,
            String stage,
            Optional<String> at,
            String by,
            StageWord.Means means) {}

    /** Writes the word down. */
    public Answer take(Books books, Said said) {
        return take(books, said, UseDesk.Said.NOTHING);
    }

    /** Writes the word down, and what was worked and used beside it. */
    public Answer take(Books books, Said said, UseDesk.Said use) {
        String name = office.fieldNamed(said.field());
        Field field = books.fields().named(name).orElseThrow();
        Recipe recipe = recipeOf(field);
        List<String> stages = recipe.stages().stream().map(Stage::name).toList();
        ZonedDateTime now = office.now().atZone(office.zone());
        StageWord word = new StageWord(
                name,
                NameMatch.of(said.stage(), stages).orRefuse("stage of " + name),
                new StageWord.Said(
                        Moments.of(said.at(), now), now.toInstant(), said.by(), office.dayClock()),
                said.means());
        Verdict verdict = switch (said.verb()) {
            case START -> books.journal().started(word, field, recipe);
            case DONE -> books.journal().done(word, field, recipe);
            case UNDO -> books.journal().undo(word, field, recipe);
        };
        if (said.verb() != Verb.DONE || verdict instanceof Verdict.Refused) {
            return Answer.of(verdict);
        }
        String more = books.journal()
                .lineOfDone(name, word.stage())
                .map(line -> new UseDesk(office).take(books, line, use))
                .orElse("");
        return Answer.of(verdict).with(more);
    }

    private Recipe recipeOf(Field field) {
        return office.settings().work().recipes().stream()
                .filter(recipe -> recipe.name().equals(field.wish().recipe()))
                .findFirst()
                .orElseThrow(() -> Refusal.badInput(field.name() + " has the recipe '"
                        + field.wish().recipe() + "', which the settings do not know: add it there,"
                        + " or import the field with one of theirs."));
    }
}
