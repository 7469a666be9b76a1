package rainward.daemon.keep;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rainward.brief.ForecastAge;
import rainward.brief.post.Letter;
import rainward.brief.post.OutboxRow;
import rainward.daemon.office.Office;
import rainward.daemon.office.PostDesk;
import rainward.daemon.office.WeatherDesk;
import rainward.store.Books;
import rainward.weather.source.ForecastSeries;

/**
 * Where the service looks at itself: what is wrong and since when, and a letter to whoever gets the
 * brief when it has been blind or dumb for so long that a day's order suffers.
 */
public final class TroubleDesk {

    private static final String BOOK = "troubles";
    private static final long LEAST_FREE_MB = 200;
    private static final Duration MAIL_STUCK = Duration.ofHours(1);
    private static final Duration RECENT = Duration.ofDays(2);

    private static final Logger LOG = LoggerFactory.getLogger(TroubleDesk.class);
    private final Office office;
    private final PostDesk post;

    public TroubleDesk(Office office, PostDesk post) {
        this.office = office;
        this.post = post;
    }

    /**
     * Something that is wrong now.
     *
     * @param what a word for it
     * @param words how it stands and what to do
     * @param patience for so long nobody is written to
     */
    record Trouble(String what, String words, Duration patience) {}

    /** Since when each is wrong. */
    record Book(Map<String, Instant> since) {

        static final Book EMPTY = new Book(Map.of());

        Book {
            since = Map.copyOf(since);
        }
    }

    /** Since when something has been wrong, as of the last look. */
    public static Optional<Instant> since(Books books, String what) {
        return Optional.ofNullable(book(books).since().get(what));
    }

    private static Book book(Books books) {
        return books.lastKnown().find(BOOK, Book.class).orElse(Book.EMPTY);
    }

    /** Looks once; a trouble is written of once for each day that it lasts. */
    public void look() {
        Instant now = office.now();
        List<Trouble> found = office.store().read(books -> found(books, now));
        Map<String, Instant> since = new TreeMap<>();
        office.store().inTransaction(books -> {
            Map<String, Instant> before = book(books).since();
            found.forEach(t -> since.put(t.what(), before.getOrDefault(t.what(), now)));
            if (!since.equals(before)) {
                books.lastKnown().put(BOOK, now, new Book(since));
            }
            return since;
        });
        for (Trouble trouble : found) {
            Instant began = since.getOrDefault(trouble.what(), now);
            if (!began.plus(trouble.patience()).isAfter(now)) {
                tell(trouble, began, now);
            }
        }
    }

    private void tell(Trouble trouble, Instant began, Instant now) {
        String farm = office.settings().farm().name();
        String event =
                "trouble/" + trouble.what() + "/" + now.atZone(office.zone()).toLocalDate();
        String words = "Rainward cannot do its work as it should.\n\n" + trouble.what() + ": "
                + trouble.words() + "\nSince " + office.dayClock().near(began, now) + ".\n\n"
                + "`rainward check` looks at everything. This is said once a day while it lasts.\n";
        Letter letter = new Letter(
                event,
                List.of(),
                farm + ": look at " + trouble.what(),
                new Letter.Written(now, office.zone()),
                Letter.Body.ofText(words));
        if (post.writeOwn(letter)) {
            LOG.warn("{}: {}", trouble.what(), trouble.words());
        }
    }

    private List<Trouble> found(Books books, Instant now) {
        List<Trouble> all = new ArrayList<>();
        forecast(books, now).ifPresent(all::add);
        mail(books, now).ifPresent(all::add);
        disk().ifPresent(all::add);
        NightDesk.last(books)
                .filter(night -> !night.well())
                .ifPresent(night ->
                        all.add(new Trouble("backup", night.words(), Duration.ofHours(20))));
        return all;
    }

    private Optional<Trouble> forecast(Books books, Instant now) {
        Instant early = now.minus(ForecastAge.SAID_AT_THE_TOP);
        List<String> blind = books.fields().properties().stream()
                .map(property -> property.name())
                .filter(name -> WeatherDesk.forecast(books, name)
                        .map(ForecastSeries::stamp)
                        .filter(stamp -> stamp.issuedAt().isAfter(early))
                        .isEmpty())
                .toList();
        return blind.isEmpty()
                ? Optional.empty()
                : Optional.of(new Trouble(
                        "forecast",
                        "none of the last 12 hours for " + String.join(", ", blind)
                                + "; see that this machine reaches the network, or name another"
                                + " service under [weather].",
                        Duration.ofMinutes(30)));
    }

    private Optional<Trouble> mail(Books books, Instant now) {
        Instant early = now.minus(MAIL_STUCK);
        long stuck = books.outbox().in(OutboxRow.State.WAITING).stream()
                .filter(row -> row.message().times().sendFrom().isBefore(early))
                .count();
        long lost = books.outbox().since(now.minus(RECENT)).stream()
                .map(row -> row.progress().state())
                .filter(s -> s == OutboxRow.State.REFUSED || s == OutboxRow.State.GIVEN_UP)
                .count();
        return stuck + lost == 0
                ? Optional.empty()
                : Optional.of(new Trouble(
                        "mail",
                        stuck + " messages wait for more than an hour, " + lost
                                + " were refused or given up; see `rainward outbox`.",
                        Duration.ofHours(1)));
    }

    private Optional<Trouble> disk() {
        try {
            long freeMb = Files.getFileStore(office.home().path()).getUsableSpace() >> 20;
            return freeMb >= LEAST_FREE_MB
                    ? Optional.empty()
                    : Optional.of(new Trouble(
                            "disk",
                            "only " + freeMb + " MB are left; free at least " + LEAST_FREE_MB
                                    + " MB.",
                            Duration.ZERO));
        } catch (IOException e) {
            return Optional.of(new Trouble(
                    "disk", "cannot be asked (" + e.getMessage() + ").", Duration.ZERO));
        }
    }
}
