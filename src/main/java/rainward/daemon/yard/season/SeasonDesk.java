package rainward.daemon.yard.season;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rainward.brief.Brief;
import rainward.daemon.office.Office;
import rainward.daemon.yard.SupplyDesk;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.FieldState;
import rainward.farm.Mix;
import rainward.farm.SeedingMethod;
import rainward.input.stock.Demands;
import rainward.queue.pace.GiveUp;
import rainward.queue.pace.SeasonPace;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.store.Books;

/** Whether the season will finish, and what to give up in time if it will not. */
public final class SeasonDesk {

    /** Common practice, no source: after a wet day the ground is let dry for half a day. */
    private static final double DAYS_LOST_A_WET_DAY = 1.5;

    /** Common practice, no source: wet and dry days come in spells. */
    private static final double STAYS_FRACTION = 0.3;

    /** Spread of a day's work where too few days are on record; common practice, no source. */
    private static final double USUAL_SPREAD = 0.4;

    /** Chance below which something should be given up; common practice, no source. */
    private static final double SAFE_CHANCE = 0.8;

    private static final int DAYS_ON_RECORD = 3;

    private final Office office;

    public SeasonDesk(Office office) {
        this.office = office;
    }

    /**
     * One mix.
     *
     * @param mix its name
     * @param doneHa seeded or up [ha]
     * @param failedHa thin or failed, to be done again [ha]
     * @param leftHa still to be seeded, the failed counted in [ha]
     * @param lastSowing last day that it goes in
     * @param finishChance that all ground whose last day is this one or earlier is done by then
     */
    public record MixLine(
            String mix,
            double doneHa,
            double failedHa,
            double leftHa,
            LocalDate lastSowing,
            double finishChance) {}

    /**
     * A field that could be given to its late mix.
     *
     * @param field its name
     * @param areaHa of it [ha]
     * @param lateMix that it would get
     * @param choiceDue last day on which that can be decided
     */
    public record Drop(String field, double areaHa, String lateMix, LocalDate choiceDue) {}

    /**
     * The season.
     *
     * @param today day of the question
     * @param mixes by last day of sowing
     * @param pace what a fit day brings
     * @param rests whether the pace is of days on record or of the plan
     * @param whole chance to finish all, and what would be left
     * @param drops what to give up so that the rest finishes; empty where nothing need be
     */
    public record View(
            LocalDate today,
            List<MixLine> mixes,
            SeasonPace.Days pace,
            String rests,
            SeasonPace whole,
            List<Drop> drops) {
        public View {
            mixes = List.copyOf(mixes);
            drops = List.copyOf(drops);
        }

        /**
         * The first last day of a mix that is still to be sown, and the chance to be done with all
         * that is due by then, where a pace is known.
         */
        public Optional<Brief.SeasonGoal> goal() {
            boolean paced = pace.haPerDay() > 0;
            return mixes.stream()
                    .filter(line -> line.leftHa() > 0)
                    .findFirst()
                    .map(line -> new Brief.SeasonGoal(
                            line.lastSowing(),
                            paced && !line.lastSowing().isBefore(today)
                                    ? OptionalDouble.of(line.finishChance())
                                    : OptionalDouble.empty()));
        }
    }

    /** The season under a plan. */
    public View view(Books books, Plan plan) {
        LocalDate today = LocalDate.ofInstant(office.now(), office.zone());
        List<FieldCase> cases = books.cases();
        List<FieldCase> waiting =
                cases.stream().filter(item -> item.status().waiting()).toList();
        List<FieldYear> years = new YearDesk(office).all(books, today.getYear());
        Paced paced = pace(years, plan, today);
        List<MixLine> lines = mixes(cases, today, paced.days());
        LocalDate last = lines.stream()
                .filter(line -> line.leftHa() > 0)
                .map(MixLine::lastSowing)
                .max(Comparator.naturalOrder())
                .orElse(today);
        double leftHa = waiting.stream().mapToDouble(i -> i.field().areaHa()).sum();
        return new View(
                today,
                lines,
                paced.days(),
                paced.rests(),
                chance(today, last, leftHa, paced.days()),
                drops(books, new Waiting(waiting, plan, today, paced.days())));
    }

    private record Paced(SeasonPace.Days days, String rests) {}

    private Paced pace(List<FieldYear> years, Plan plan, LocalDate today) {
        Map<LocalDate, Double> byDay = new TreeMap<>();
        years.forEach(year -> year.seedings().stream()
                .filter(seeding -> seeding.day().isBefore(today))
                .forEach(s -> byDay.merge(s.day(), year.field().areaHa(), Double::sum)));
        double fitFraction = Math.max(
                0.05, 1 - DAYS_LOST_A_WET_DAY * office.climate().on(today).wetDayFraction());
        if (byDay.size() >= DAYS_ON_RECORD) {
            double mean = byDay.values().stream().mapToDouble(v -> v).average().orElse(0);
            double variance = byDay.values().stream()
                    .mapToDouble(v -> (v - mean) * (v - mean))
                    .average()
                    .orElse(0);
            return new Paced(
                    new SeasonPace.Days(
                            fitFraction,
                            STAYS_FRACTION,
                            mean,
                            Math.min(2, Math.sqrt(variance) / Math.max(mean, 1e-9))),
                    byDay.size() + " days of seeding on record");
        }
        return new Paced(
                new SeasonPace.Days(
                        fitFraction, STAYS_FRACTION, plannedHaPerDay(years, plan), USUAL_SPREAD),
                "the plan, for want of days on record");
    }

    private double plannedHaPerDay(List<FieldYear> years, Plan plan) {
        Map<String, Double> areas = years.stream()
                .map(FieldYear::field)
                .collect(Collectors.toMap(Field::name, Field::areaHa));
        Map<LocalDate, Double> byDay = plan.items().stream()
                .filter(item -> item.sowing().isPresent())
                .collect(Collectors.groupingBy(
                        item -> day(item.work().from()),
                        Collectors.summingDouble(
                                item -> areas.getOrDefault(item.place().field(), 0.0)
                                        * item.shareFraction())));
        return byDay.values().stream().mapToDouble(v -> v).average().orElse(0);
    }

    private List<MixLine> mixes(List<FieldCase> cases, LocalDate today, SeasonPace.Days days) {
        Map<String, double[]> sums = new TreeMap<>();
        for (FieldCase item : cases) {
            FieldState state = item.status().state();
            String mix = item.mix();
            double areaHa = item.field().areaHa();
            double[] sum = sums.computeIfAbsent(mix, m -> new double[3]);
            boolean done = state == FieldState.SEEDED || state == FieldState.UP;
            sum[0] += done ? areaHa : 0;
            sum[1] += state == FieldState.FAILED ? areaHa : 0;
            sum[2] += item.status().waiting() ? areaHa : 0;
        }
        Map<String, LocalDate> ends = new TreeMap<>();
        sums.keySet().forEach(mix -> ends.put(mix, lastSowing(mix, today)));
        List<MixLine> lines = new ArrayList<>();
        sums.forEach((mix, sum) -> {
            LocalDate end = Optional.ofNullable(ends.get(mix)).orElse(today);
            double dueHa = sums.entrySet().stream()
                    .filter(e -> !Optional.ofNullable(ends.get(e.getKey()))
                            .orElse(today)
                            .isAfter(end))
                    .mapToDouble(e -> e.getValue()[2])
                    .sum();
            double chance = dueHa > 0 ? chance(today, end, dueHa, days).finishChance() : 1;
            lines.add(new MixLine(mix, sum[0], sum[1], sum[2], end, chance));
        });
        lines.sort(Comparator.comparing(MixLine::lastSowing).thenComparing(MixLine::mix));
        return lines;
    }

    private LocalDate lastSowing(String mix, LocalDate today) {
        return Optional.ofNullable(office.mixes().get(mix))
                .map(known -> known.season().lastSowing().atYear(today.getYear()))
                .orElse(today);
    }

    private SeasonPace chance(
            LocalDate today, LocalDate last, double leftHa, SeasonPace.Days days) {
        return SeasonPace.of(
                new SeasonPace.Standing(
                        today, last, office.settings().work().crew().hours().days(), leftHa),
                days,
                office.settings().order().seed());
    }

    private record Waiting(
            List<FieldCase> fields, Plan plan, LocalDate today, SeasonPace.Days days) {

        /** What the plan expects of a field; nothing where it is left out. */
        double worth(FieldCase item) {
            return plan.seedingOf(item.field().name()).stream()
                    .flatMap(planned -> planned.sowing().stream())
                    .mapToDouble(PlanItem.Sowing::worth)
                    .findFirst()
                    .orElse(0);
        }
    }

    private List<Drop> drops(Books books, Waiting waiting) {
        Map<String, FieldCase> named = waiting.fields().stream()
                .collect(Collectors.toMap(item -> item.field().name(), item -> item));
        List<GiveUp> all = waiting.fields().stream()
                .map(item -> new GiveUp(
                        item.field().name(),
                        item.field().areaHa(),
                        waiting.worth(item),
                        deadline(item, waiting.today()),
                        lateMix(item).isPresent()))
                .toList();
        return GiveUp.of(
                        all,
                        (deadline, leftHa) -> chance(
                                        waiting.today(), deadline, leftHa, waiting.days())
                                .finishChance(),
                        SAFE_CHANCE)
                .stream()
                .flatMap(given -> Optional.ofNullable(named.get(given.field())).stream())
                .map(item -> drop(books, item, waiting.today()))
                .toList();
    }

    private LocalDate deadline(FieldCase item, LocalDate today) {
        return lastSowing(item.field().wish().mixes().get(0), today);
    }

    /** The mix of its wishes that goes in last, where that is not the one wanted first. */
    private Optional<Mix> lateMix(FieldCase item) {
        List<Mix> mixes = office.roster().mixesOf(item.field());
        return mixes.stream()
                .skip(1)
                .max(Comparator.comparing(mix -> mix.season().lastSowing()))
                .filter(late -> late.season()
                                .lastSowing()
                                .compareTo(mixes.get(0).season().lastSowing())
                        > 0);
    }

    private Drop drop(Books books, FieldCase item, LocalDate today) {
        Mix late = lateMix(item).orElseThrow();
        double thereHa = Demands.areaHa(
                        late,
                        SeedingMethod.DRILLED,
                        List.copyOf(new SupplyDesk(office).lots(books).values()))
                .orElse(0);
        int deliveryDays = office.settings().inputs().shed().deliveryDays();
        LocalDate first = late.season().firstSowing().atYear(today.getYear());
        LocalDate lateDue =
                thereHa >= item.field().areaHa() ? first : first.minusDays(deliveryDays);
        LocalDate wanted = deadline(item, today);
        LocalDate due = lateDue.isBefore(wanted) ? lateDue : wanted;
        return new Drop(
                item.field().name(),
                item.field().areaHa(),
                late.name(),
                due.isBefore(today) ? today : due);
    }

    private LocalDate day(Instant at) {
        return LocalDate.ofInstant(at, office.zone());
    }
}
