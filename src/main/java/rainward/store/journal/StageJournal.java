package rainward.store.journal;

import static java.util.stream.Collectors.collectingAndThen;
import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toList;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import rainward.farm.Field;
import rainward.farm.FieldStatus;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.farm.Stage;
import rainward.farm.StageRecord;

/** What was done on the fields and said about them; where a field stands is read from it. */
public final class StageJournal {

    private final JournalTable table;

    public StageJournal(Handle handle) {
        this.table = new JournalTable(handle);
    }

    /** Where every field with a line in the journal stands, by name. */
    public Map<String, FieldStatus> statuses() {
        return table.all().stream()
                .collect(groupingBy(
                        JournalEntry::field,
                        collectingAndThen(toList(), JournalReading::statusOf)));
    }

    public FieldStatus statusOf(String field) {
        return JournalReading.statusOf(table.of(field));
    }

    /** Every line about a field, what was undone too. */
    public List<JournalEntry> of(String field) {
        return table.of(field);
    }

    /** The line that says a stage of this round is done, if there is one. */
    public Optional<JournalEntry> lineOfDone(String field, String stage) {
        return JournalReading.thisRound(table.of(field)).stream()
                .filter(entry -> entry.kind() == JournalEntry.Kind.DONE)
                .filter(entry -> entry.concerns(stage))
                .reduce((first, second) -> second);
    }

    /** Every line of every field, what was undone too. */
    public List<JournalEntry> everything() {
        return table.all();
    }

    /** Work on a stage began; told twice, it stands there once. */
    public Verdict started(StageWord word, Field field, Recipe recipe) {
        StageRules rules = rules(field, recipe);
        Optional<StageRecord> record = rules.status().of(word.stage());
        if (record.isPresent()) {
            return new Verdict.AlreadySo(field.name() + ": " + word.stage() + " is already "
                    + (record.get().done() ? "done." : "under way."));
        }
        return rules.against(word)
                .<Verdict>map(Verdict.Refused::new)
                .orElseGet(() -> write(word, field, rules, JournalEntry.Kind.STARTED));
    }

    /** A stage was finished; told twice, it stands there once. */
    public Verdict done(StageWord word, Field field, Recipe recipe) {
        StageRules rules = rules(field, recipe);
        Optional<Instant> before = rules.status().of(word.stage()).flatMap(StageRecord::finishedAt);
        if (before.isPresent()) {
            return new Verdict.AlreadySo(field.name() + ": " + word.stage()
                    + " is already recorded as done at " + StageRules.moment(before.get(), word)
                    + "; undo it first to record another time.");
        }
        return rules.against(word)
                .<Verdict>map(Verdict.Refused::new)
                .orElseGet(() -> write(word, field, rules, JournalEntry.Kind.DONE));
    }

    private Verdict write(StageWord word, Field field, StageRules rules, JournalEntry.Kind kind) {
        List<Long> lines = new ArrayList<>();
        for (String name : rules.earlier(word)) {
            boolean open = rules.status().of(name).filter(StageRecord::done).isEmpty();
            if (open && word.means().passingOver().contains(name)) {
                Stage left = rules.stage(name);
                lines.add(append(word, field, JournalEntry.Kind.PASSED_OVER, left));
            }
        }
        lines.add(append(word, field, kind, rules.stage(word.stage())));
        String verb = kind == JournalEntry.Kind.DONE ? " done at " : " started at ";
        return new Verdict.Written(
                field.name() + ": " + word.stage() + verb
                        + StageRules.moment(word.said().at(), word) + ".",
                lines);
    }

    private long append(StageWord word, Field field, JournalEntry.Kind kind, Stage stage) {
        boolean own = stage.name().equals(word.stage());
        boolean sown = kind == JournalEntry.Kind.DONE && stage.operation() == Operation.SEED;
        JournalEntry.Detail detail = new JournalEntry.Detail(
                Optional.of(stage.name()),
                Optional.of(stage.operation()),
                own ? word.means().machine() : Optional.empty(),
                sown
                        ? word.means()
                                .mix()
                                .or(() -> Optional.of(field.wish().mixes().get(0)))
                        : Optional.empty(),
                Optional.empty(),
                OptionalLong.empty(),
                Optional.empty());
        return table.append(field.name(), kind, said(word.said()), detail);
    }

    /**
     * Takes back the last thing said about a stage in this round: first that it is done, then that
     * it was started. The line stays, a new one says that it does not count.
     */
    public Verdict undo(StageWord word, Field field, Recipe recipe) {
        List<String> later = rules(field, recipe).laterBegun(word.stage());
        if (!later.isEmpty()) {
            return new Verdict.Refused(field.name() + ": " + word.stage()
                    + " cannot be undone while " + String.join(" and ", later)
                    + ", which came after it, stands; undo the last one first.");
        }
        return JournalReading.thisRound(table.of(field.name())).stream()
                .filter(entry -> entry.concerns(word.stage()))
                .reduce((first, second) -> second)
                .<Verdict>map(last -> undone(word, last))
                .orElseGet(() -> new Verdict.AlreadySo(field.name() + ": nothing is recorded about "
                        + word.stage() + ", so there is nothing to undo."));
    }

    private Verdict undone(StageWord word, JournalEntry last) {
        JournalEntry.Detail why = last.detail().undoing(last.id());
        long line = table.append(word.field(), JournalEntry.Kind.UNDONE, said(word.said()), why);
        return new Verdict.Written(
                word.field() + ": " + word.stage() + " is no longer recorded as "
                        + switch (last.kind()) {
                            case DONE -> "done";
                            case PASSED_OVER -> "left out";
                            default -> "started";
                        }
                        + ".",
                List.of(line));
    }

    /** Says that one line does not count, whatever it says; told twice, it is said once. */
    public Verdict undoLine(long id, JournalEntry.Said said) {
        List<JournalEntry> all = table.all();
        Optional<JournalEntry> line = all.stream()
                .filter(entry -> entry.id() == id)
                .filter(entry -> entry.kind() != JournalEntry.Kind.UNDONE)
                .findFirst();
        if (line.isEmpty()) {
            return new Verdict.Refused("there is no line " + id + " in the journal.");
        }
        if (!JournalReading.counting(all).contains(line.get())) {
            return new Verdict.AlreadySo("line " + id + " does not count already.");
        }
        JournalEntry.Detail why = JournalEntry.Detail.NONE.undoing(id);
        long written = table.append(line.get().field(), JournalEntry.Kind.UNDONE, said, why);
        return new Verdict.Written("line " + id + " does not count any more.", List.of(written));
    }

    private StageRules rules(Field field, Recipe recipe) {
        return new StageRules(recipe, statusOf(field.name()));
    }

    private static JournalEntry.Said said(StageWord.Said said) {
        return new JournalEntry.Said(said.at(), said.now(), said.by());
    }

    /** Anything else that a person says about a field: hold, pin, drop and their opposites. */
    public long say(String field, JournalEntry.Kind kind, JournalEntry.Said said) {
        return table.append(field, kind, said, JournalEntry.Detail.NONE);
    }

    /** Keeps words about a field that change nothing else. */
    public long note(String field, String words, JournalEntry.Said said) {
        JournalEntry.Detail detail = JournalEntry.Detail.noting(words);
        return table.append(field, JournalEntry.Kind.NOTED, said, detail);
    }

    /** Leaves a field out of the order until then. */
    public long hold(String field, Instant until, JournalEntry.Said said) {
        JournalEntry.Detail detail = JournalEntry.Detail.NONE.until(until);
        return table.append(field, JournalEntry.Kind.HELD, said, detail);
    }
}
