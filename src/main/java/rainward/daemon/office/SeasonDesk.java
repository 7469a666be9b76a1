package rainward.daemon.office;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import rainward.brief.Brief;
import rainward.cycle.Cycle;
import rainward.cycle.Outlook;
import rainward.farm.FieldCase;
import rainward.queue.pace.SeasonPace;
import rainward.store.Books;

/** Where the rest of the season is held against the pace of the crew. */
final class SeasonDesk {

    /** Before the season has its own record: so many days of which half had seeding; our choice. */
    private static final double PRIOR_DAYS = 10;

    private static final double PRIOR_FIT = 0.5;

    /** How long fit and unfit spells last, and how days differ: our choice, no source. */
    private static final double STAYS_FRACTION = 0.5;

    private static final double SPREAD_FRACTION = 0.4;

    private final Office office;
    private final ZoneId zone;

    SeasonDesk(Office office) {
        this.office = office;
        this.zone = office.zone();
    }

    /**
     * The last day on which the first-choice mixes of waiting fields go in, and the chance to be
     * done by then at the pace of this season; without a record of it, at that of the order.
     */
    Optional<Brief.SeasonGoal> goal(Books books, Cycle.Result result) {
        LocalDate today = LocalDate.ofInstant(result.outlook().asOf(), zone);
        List<FieldCase> waiting = result.outlook().fields().stream()
                .map(Outlook.FieldOutlook::item)
                .filter(item -> item.status().waiting())
                .toList();
        return waiting.stream()
                .flatMap(item -> office.roster().mixesOf(item.field()).stream().limit(1))
                .map(mix -> mix.season().lastSowing().atYear(today.getYear()))
                .min(LocalDate::compareTo)
                .map(last -> new Brief.SeasonGoal(
                        last, chance(books, result, new Rest(today, last, waiting))));
    }

    private record Rest(LocalDate today, LocalDate lastDay, List<FieldCase> waiting) {

        double leftHa() {
            return waiting.stream().mapToDouble(item -> item.field().areaHa()).sum();
        }
    }

    private OptionalDouble chance(Books books, Cycle.Result result, Rest rest) {
        Map<LocalDate, Double> done = seededHa(books.cases(), rest.today());
        Map<LocalDate, Double> pace = done.isEmpty() ? plannedHa(result) : done;
        if (pace.isEmpty() || rest.lastDay().isBefore(rest.today())) {
            return OptionalDouble.empty();
        }
        double haPerDay = pace.values().stream().mapToDouble(ha -> ha).average().orElseThrow();
        SeasonPace season = SeasonPace.of(
                new SeasonPace.Standing(rest.today(), rest.lastDay(), workDays(), rest.leftHa()),
                new SeasonPace.Days(
                        fitFraction(done, rest.today()), STAYS_FRACTION, haPerDay, SPREAD_FRACTION),
                office.settings().order().seed());
        return OptionalDouble.of(season.finishChance());
    }

    private Set<DayOfWeek> workDays() {
        return office.settings().work().crew().hours().days();
    }

    /** Share of working days since the first seeding on which seed went in. */
    private double fitFraction(Map<LocalDate, Double> done, LocalDate today) {
        double worked = done.keySet().stream()
                .min(Comparator.naturalOrder())
                .map(first -> (double) first.datesUntil(today)
                        .filter(day -> workDays().contains(day.getDayOfWeek()))
                        .count())
                .orElse(0.0);
        double fit = Math.min(worked, done.size());
        return (fit + PRIOR_FIT * PRIOR_DAYS) / (worked + PRIOR_DAYS);
    }

    /** Ground that got its seed this year, by day before today [ha]. */
    private Map<LocalDate, Double> seededHa(List<FieldCase> cases, LocalDate today) {
        Map<LocalDate, Double> byDay = new HashMap<>();
        cases.forEach(item -> item.status()
                .seededAt()
                .map(at -> LocalDate.ofInstant(at, zone))
                .filter(day -> day.getYear() == today.getYear() && day.isBefore(today))
                .ifPresent(day -> byDay.merge(day, item.field().areaHa(), Double::sum)));
        return byDay;
    }

    private Map<LocalDate, Double> plannedHa(Cycle.Result result) {
        Map<LocalDate, Double> byDay = new HashMap<>();
        result.outlook().plan().items().stream()
                .filter(item -> item.sowing().isPresent())
                .forEach(item -> result.outlook()
                        .field(item.place().field())
                        .ifPresent(field -> byDay.merge(
                                LocalDate.ofInstant(item.work().from(), zone),
                                field.item().field().areaHa() * item.shareFraction(),
                                Double::sum)));
        return byDay;
    }
}
