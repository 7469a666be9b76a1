package rainward.daemon.board;

import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import rainward.board.house.Saying;
import rainward.board.house.Standing;
import rainward.board.house.Takes;
import rainward.daemon.board.form.BoundaryForm;
import rainward.daemon.board.form.EntryDesk;
import rainward.daemon.board.form.FieldForm;
import rainward.daemon.board.form.SettingsFile;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.word.Answer;
import rainward.daemon.word.FieldDesk;
import rainward.daemon.word.GaugeDesk;
import rainward.daemon.word.LandDesk;
import rainward.daemon.word.LookDesk;
import rainward.daemon.word.SoilDesk;
import rainward.daemon.word.StageDesk;
import rainward.daemon.word.WishDesk;
import rainward.daemon.yard.StockDesk;
import rainward.input.stock.StockEntry;
import rainward.store.Books;
import rainward.store.journal.JournalEntry;
import rainward.store.journal.StageWord;

/** Takes words of the board to the desks of the commands. */
final class WordTaker implements Takes {

    private static final int LONGEST_KEY = 120;

    private final Office office;
    private final Standings standings;
    private final Replanner replanner;

    WordTaker(Office office, Standings standings, Replanner replanner) {
        this.office = office;
        this.standings = standings;
        this.replanner = replanner;
    }

    @Override
    public Taken take(Saying saying) {
        if (saying.key().isBlank() || saying.key().length() > LONGEST_KEY) {
            return new Taken("refused", "The form has no key: load the page again.");
        }
        try {
            Told told = office.store().inTransaction(books -> once(books, saying));
            if (told.fresh()) {
                tell(saying, told.taken());
            }
            return told.taken();
        } catch (Refusal refusal) {
            return new Taken("refused", forPages(String.valueOf(refusal.getMessage())));
        }
    }

    /** What came of a form, and whether it came for the first time. */
    private record Told(Taken taken, boolean fresh) {}

    private Told once(Books books, Saying saying) {
        Optional<Taken> before = FormBook.taken(books, saying.key());
        if (before.isPresent()) {
            return new Told(before.get(), false);
        }
        Taken taken = write(books, saying);
        if (!taken.refused()) {
            FormBook.keep(books, new FormBook.Form(saying.key(), taken), office.now());
        }
        return new Told(taken, !taken.refused());
    }

    private void tell(Saying saying, Taken taken) {
        boolean moves = switch (saying.act()) {
            case NOTE, COUNT, RECEIVE, MAIL_AGAIN, MAIL_OUT -> false;
            default -> taken.outcome().equals("written");
        };
        standings.said(new Standing.Effect(
                saying.key(),
                office.now(),
                saying.by(),
                taken.words(),
                about(saying),
                moves ? Optional.empty() : Optional.of(java.util.List.of())));
        if (moves) {
            replanner.replan(
                    saying.by() + " on the board: " + saying.act().name().toLowerCase(Locale.ROOT));
        }
    }

    /** Whatever got another name stands in no order yet. */
    private Optional<Standing.About> about(Saying saying) {
        return saying.part("field")
                .filter(field ->
                        saying.part("name").filter(n -> !n.equals(field)).isEmpty())
                .flatMap(standings::about);
    }

    /** Words that name a command are none on a page. */
    private static String forPages(String words) {
        return words.replaceAll(
                        "; record (it|them) first, or name what is left out.*",
                        "; record" + " $1 first.")
                .replaceAll("(write )?`rainward ([a-z]+)`", "$2")
                .replace("--at", "the time")
                .replace("--since", "'empty since'")
                .replace("--cause", "the cause");
    }

    private Taken write(Books books, Saying saying) {
        return switch (saying.act()) {
            case START -> stage(books, saying, StageDesk.Verb.START);
            case DONE -> stage(books, saying, StageDesk.Verb.DONE);
            case UNDO -> stage(books, saying, StageDesk.Verb.UNDO);
            case PIN -> field(books, saying, FieldDesk.Verb.PIN);
            case HOLD -> field(books, saying, FieldDesk.Verb.HOLD);
            case DROP -> field(books, saying, FieldDesk.Verb.DROP);
            case FREE -> field(books, saying, FieldDesk.Verb.FREE);
            case NOTE -> field(books, saying, FieldDesk.Verb.NOTE);
            case SOIL -> soil(books, saying);
            case LOOK -> look(books, saying);
            case RAIN -> rain(books, saying);
            case COUNT -> stock(books, saying, StockEntry.Kind.COUNTED);
            case RECEIVE -> stock(books, saying, StockEntry.Kind.RECEIVED);
            case FIELD -> wish(books, saying);
            case REPLAN -> new Taken("written", "The order is worked out again.");
            case MAIL_AGAIN -> mail(books, saying, true);
            case MAIL_OUT -> mail(books, saying, false);
            case SETTINGS ->
                new Taken(
                        "written",
                        new SettingsFile(office)
                                .keep(must(saying, "settings"), saying.part("seen")));
            case ENTRY -> entry(books, saying);
            case ENTRY_OUT -> entryOut(books, saying);
        };
    }

    private static String must(Saying saying, String part) {
        return saying.part(part)
                .orElseThrow(() -> Refusal.badInput("The form lacks its " + part + "."));
    }

    private Taken stage(Books books, Saying saying, StageDesk.Verb verb) {
        return taken(new StageDesk(office)
                .take(
                        books,
                        new StageDesk.Said(
                                verb,
                                must(saying, "field"),
                                must(saying, "stage"),
                                saying.part("at"),
                                saying.by(),
                                new StageWord.Means(
                                        saying.part("machine"), saying.part("mix"), Set.of()))));
    }

    private static Taken taken(Answer answer) {
        return new Taken(answer.outcome(), forPages(answer.words()));
    }

    private Taken field(Books books, Saying saying, FieldDesk.Verb verb) {
        String text = saying.part("until").or(() -> saying.part("note")).orElse("");
        return taken(new FieldDesk(office)
                .take(books, new FieldDesk.Said(verb, must(saying, "field"), text, saying.by())));
    }

    private Taken soil(Books books, Saying saying) {
        SoilDesk.Told told = new SoilDesk(office)
                .take(
                        books,
                        new SoilDesk.Said(
                                must(saying, "field"),
                                Optional.of(must(saying, "word")),
                                saying.part("at"),
                                saying.by()));
        return new Taken(told.outcome(), told.words());
    }

    private Taken look(Books books, Saying saying) {
        LookDesk.Finding finding = new LookDesk(office)
                .take(
                        books,
                        new LookDesk.Said(
                                must(saying, "field"),
                                must(saying, "result"),
                                new LookDesk.Seen(
                                        saying.part("cause"),
                                        saying.part("counted"),
                                        saying.part("note")),
                                saying.part("at"),
                                saying.by()));
        return new Taken("written", finding.words());
    }

    private Taken rain(Books books, Saying saying) {
        GaugeDesk.Reading reading = new GaugeDesk(office)
                .take(
                        books,
                        new GaugeDesk.Said(
                                must(saying, "property"),
                                must(saying, "amount"),
                                saying.part("at"),
                                saying.part("since"),
                                saying.by()));
        return new Taken(
                reading.isNew() ? "written" : "already so",
                reading.words(office.settings().farm().units()));
    }

    private Taken stock(Books books, Saying saying, StockEntry.Kind kind) {
        Instant now = office.now();
        return new Taken(
                "written",
                new StockDesk(office)
                        .write(
                                books,
                                kind,
                                must(saying, "item"),
                                must(saying, "amount"),
                                new JournalEntry.Said(now, now, saying.by())));
    }

    private Taken wish(Books books, Saying saying) {
        String field = must(saying, "field");
        Answer changed = new WishDesk(office)
                .take(
                        books,
                        new WishDesk.Said(
                                field,
                                saying.part("area"),
                                saying.part("priority"),
                                saying.part("recipe"),
                                saying.part("mixes")));
        Optional<String> name =
                saying.part("name").map(String::strip).filter(text -> !text.equals(field));
        if (name.isEmpty()) {
            return taken(changed);
        }
        Answer renamed = new LandDesk(office).rename(books, field, name.get(), saying.by());
        boolean both = changed.outcome().equals("written");
        return new Taken("written", (both ? changed.words() + " " : "") + renamed.words());
    }

    private Taken entry(Books books, Saying saying) {
        return switch (saying.part("kind@entry").orElse("")) {
            case FieldForm.KIND -> taken(new FieldForm(office).add(books, saying.parts()));
            case BoundaryForm.KIND ->
                taken(new BoundaryForm(office).keep(books, saying.parts(), saying.by()));
            default -> new Taken("written", new EntryDesk(office).keep(saying.parts()));
        };
    }

    private Taken entryOut(Books books, Saying saying) {
        return ofField(saying)
                ? taken(new LandDesk(office).remove(books, must(saying, "name@entry")))
                : new Taken("written", new EntryDesk(office).takeOut(saying.parts()));
    }

    private static boolean ofField(Saying saying) {
        return saying.part("kind@entry").filter(FieldForm.KIND::equals).isPresent();
    }

    private Taken mail(Books books, Saying saying, boolean again) {
        long id = number(must(saying, "id"));
        Instant now = office.now();
        Duration triedFor = office.settings().mail().triedFor();
        String subject = books.outbox()
                .row(id)
                .orElseThrow(() -> Refusal.badInput("There is no message " + id + "."))
                .message()
                .subject();
        boolean changed = again
                ? books.outbox().retry(id, now, now.plus(triedFor))
                : books.outbox().drop(id, now);
        if (!changed) {
            throw Refusal.badInput("'" + subject + "' was sent already.");
        }
        return new Taken(
                "written",
                "'" + subject + "' " + (again ? "is sent again." : "is taken out of the mail."));
    }

    private static long number(String text) {
        try {
            return Long.parseLong(text);
        } catch (NumberFormatException e) {
            throw Refusal.badInput("'" + text + "' is no number of a message.");
        }
    }
}
