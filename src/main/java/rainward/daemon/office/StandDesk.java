package rainward.daemon.office;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import rainward.input.check.CheckDay;

/** Where seeded fields are looked back on. */
public final class StandDesk {

    private final Office office;

    public StandDesk(Office office) {
        this.office = office;
    }

    /** What became of a seeding. */
    public enum Came {
        UP,
        FAILED,
        WAITING
    }

    /**
     * A look at a seeded field.
     *
     * @param field its name
     * @param came what became of it
     * @param words for the person
     */
    public record Look(String field, Came came, String words) {}

    /** What the model says of every seeded field under the weather that came. */
    public List<Look> lookAtAll() {
        Instant now = office.now();
        LocalDate today = LocalDate.ofInstant(now, office.zone());
        StandChecks checks = new StandChecks(office);
        return office.store().read(books -> checks.all(books, now)).stream()
                .map(check -> look(check, today))
                .toList();
    }

    /** A stand that the model expects only after today is none yet. */
    private static Look look(StandChecks.Check check, LocalDate today) {
        String field = check.item().field().name();
        CheckDay day = check.day();
        if (day.seed() == CheckDay.Seed.LOST) {
            return new Look(field, Came.FAILED, "failed: " + check.cause().orElse("lost"));
        }
        double since = ChronoUnit.DAYS.between(day.sownOn(), today);
        return day.emergence()
                .filter(range -> day.seed() == CheckDay.Seed.GROWING && range.middleDays() <= since)
                .map(range -> new Look(
                        field,
                        Came.UP,
                        "a stand, " + Math.round(range.middleDays()) + " days after seeding"))
                .orElseGet(() -> new Look(field, Came.WAITING, "nothing to see yet"));
    }
}
