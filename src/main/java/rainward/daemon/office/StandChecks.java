package rainward.daemon.office;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.cycle.SeedInGround;
import rainward.farm.FieldCase;
import rainward.farm.FieldState;
import rainward.farm.Mix;
import rainward.input.check.CheckDay;
import rainward.stand.StandOutlook.EmergenceRange;
import rainward.store.Books;

/**
 * Which seeded fields are to be looked at, and when, by what the stand model says of their seed.
 */
public final class StandChecks {

    /** A seeding older than the weather on record was due long ago. */
    private static final Duration FRESH = Duration.ofDays(2);

    private final Office office;

    public StandChecks(Office office) {
        this.office = office;
    }

    /**
     * A check to come.
     *
     * @param item the field
     * @param day when, and why then
     * @param due that day
     * @param cause what most of the seed was lost by, where it is taken for lost
     */
    public record Check(FieldCase item, CheckDay day, LocalDate due, Optional<String> cause) {}

    /** Every seeded field that nobody has reported on, the first to look at first. */
    public List<Check> all(Books books, Instant now) {
        List<FieldCase> seeded = books.cases().stream()
                .filter(item -> item.status().state() == FieldState.SEEDED)
                .toList();
        if (seeded.isEmpty()) {
            return List.of();
        }
        Map<String, SeedInGround> known =
                SeedInGround.all(new PlanningDesk(office).input(books, now));
        return seeded.stream()
                .flatMap(item ->
                        check(item, Optional.ofNullable(known.get(item.field().name())), now)
                                .stream())
                .sorted(Comparator.comparing(Check::due)
                        .thenComparing(check -> check.item().field().name()))
                .toList();
    }

    private Optional<Check> check(FieldCase item, Optional<SeedInGround> seed, Instant now) {
        ZoneId zone = office.zone();
        LocalDate today = LocalDate.ofInstant(now, zone);
        return office.roster().sownAt(item).map(at -> {
            LocalDate sownOn = LocalDate.ofInstant(at, zone);
            boolean fresh = at.plus(FRESH).isAfter(now);
            CheckDay day = new CheckDay(
                    sownOn,
                    seed.map(one -> state(one.state())).orElse(CheckDay.Seed.GROWING),
                    seed.flatMap(one -> range(one.emergence())),
                    seed.isPresent() || fresh ? seasonEnd(item, sownOn) : sownOn);
            return new Check(
                    item,
                    day,
                    day.due(today),
                    seed.filter(one -> one.state() == SeedInGround.State.LOST)
                            .map(SeedInGround::cause));
        });
    }

    private LocalDate seasonEnd(FieldCase item, LocalDate sownOn) {
        return Optional.ofNullable(office.mixes().get(item.mix()))
                .map(Mix::season)
                .map(season -> season.lastEmergence().atYear(sownOn.getYear()))
                .orElse(sownOn);
    }

    private static CheckDay.Seed state(SeedInGround.State state) {
        return switch (state) {
            case DRY -> CheckDay.Seed.DRY;
            case GROWING -> CheckDay.Seed.GROWING;
            case LOST -> CheckDay.Seed.LOST;
        };
    }

    private static Optional<CheckDay.Emergence> range(EmergenceRange range) {
        return range.known()
                ? Optional.of(
                        new CheckDay.Emergence(range.p10Days(), range.p50Days(), range.p90Days()))
                : Optional.empty();
    }
}
