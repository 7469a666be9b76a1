package rainward.daemon.keep;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rainward.daemon.office.Office;
import rainward.daemon.schedule.DailySlot;
import rainward.daemon.settings.Settings;
import rainward.store.Backups;
import rainward.store.Books;
import rainward.store.row.StoreException;

/** Where the database is copied every night, and what is too old is let go of. */
public final class NightDesk {

    /** After the last mail of a day and before the first brief that anybody wants. */
    private static final LocalTime AT = LocalTime.of(2, 40);

    private static final String JOB = "night work";

    private static final Logger LOG = LoggerFactory.getLogger(NightDesk.class);

    private final Office office;
    private final DailySlot slot;

    public NightDesk(Office office) {
        this.office = office;
        this.slot = new DailySlot(AT, office.zone());
    }

    /**
     * How the last night went.
     *
     * @param at when its work ended
     * @param well a copy was made
     * @param since when it has been so
     * @param words where the copy is, or what to do
     */
    public record Night(Instant at, boolean well, Instant since, String words) {}

    /** How the last night went, if there was one. */
    public static Optional<Night> last(Books books) {
        return books.lastKnown().find(JOB, Night.class);
    }

    /** Does the work of the last night unless it is done; a night that failed is tried again. */
    public void workIfDue() {
        Instant now = office.now();
        LocalDate day = slot.latestDay(now);
        boolean done = office.store()
                .read(books -> books.jobs().lastDue(JOB))
                .filter(last -> !last.isBefore(slot.on(day)))
                .isPresent();
        if (!done) {
            work(day);
        }
    }

    private void work(LocalDate day) {
        try {
            String kept = office.store().noCopies().orElseGet(() -> backUp(day).toString());
            office.store().inTransaction(books -> {
                books.jobs().once(JOB, slot.on(day), office.now());
                return forget(books);
            });
            note(true, kept);
        } catch (StoreException e) {
            LOG.warn("The work of the night failed: {}", e.getMessage());
            note(false, String.valueOf(e.getMessage()));
        }
    }

    /**
     * Makes the copy of a day.
     *
     * @throws StoreException where it cannot be made
     */
    Path backUp(LocalDate day) {
        Settings.Keeping keeping = office.settings().keeping();
        return Backups.make(office.store(), folder(office), day, keeping.backups());
    }

    /** Where the copies lie. */
    static Path folder(Office office) {
        return office.home().path().resolve(office.settings().keeping().backupFolder());
    }

    private int forget(Books books) {
        Settings.Keeping keeping = office.settings().keeping();
        Instant now = office.now();
        int gone = books.forecasts().forgetBefore(now.minus(keeping.forecasts()))
                + books.outbox().forgetBefore(now.minus(keeping.mail()))
                + books.jobs().forgetBefore(now.minus(keeping.mail()));
        if (gone > 0) {
            LOG.info("{} old answers and messages were let go of.", gone);
        }
        return gone;
    }

    private void note(boolean well, String words) {
        Instant now = office.now();
        office.store().inTransaction(books -> {
            Instant since = last(books)
                    .filter(before -> before.well() == well)
                    .map(Night::since)
                    .orElse(now);
            books.lastKnown().put(JOB, now, new Night(now, well, since, words));
            return since;
        });
    }
}
