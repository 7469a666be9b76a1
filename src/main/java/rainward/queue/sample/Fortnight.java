package rainward.queue.sample;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.StageRecord;
import rainward.farm.Window;
import rainward.queue.model.Habits;
import rainward.queue.plan.Planner;
import rainward.queue.problem.HorizonMinutes;
import rainward.queue.problem.HourlyMean;
import rainward.queue.problem.InBoxes;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;
import rainward.queue.problem.Standing;
import rainward.queue.search.Effort;

/**
 * Two weeks of planning anew every twelve hours under forecasts that come and go, each week with
 * fields of its own: how steady the crew's next day is, and what that costs.
 */
public final class Fortnight {

    private static final int CYCLES_A_WEEK = 14;

    /** No kind of weather has more in a week. */
    private static final int MOST_STORMS = 8;

    private static final Duration CYCLE = Duration.ofHours(12);
    private static final Duration NEXT_DAY = Duration.ofHours(24);

    private final GeneratedDays.Kind kind;
    private final long tries;
    private final double changeFraction;
    private int told;
    private int moved;

    private Fortnight(GeneratedDays.Kind kind, long tries, double changeFraction) {
        this.kind = kind;
        this.tries = tries;
        this.changeFraction = changeFraction;
    }

    /**
     * How steady plans were.
     *
     * @param kind of weather and crew
     * @param movedPct of the items told for the next day, how many a later cycle moved [%]
     * @param freshMovedPct the same where each plan is made afresh, change being free [%]
     * @param costPct worth of what got seeded, against plans made afresh [%]; below zero: a gain
     */
    public record Steadiness(
            GeneratedDays.Kind kind, double movedPct, double freshMovedPct, double costPct) {}

    /**
     * Lives through two weeks of a kind, with a price of change and without.
     *
     * @param changeFraction price of moving one item, as a share of the order's value
     */
    public static Steadiness of(GeneratedDays.Kind kind, long tries, double changeFraction) {
        Fortnight steady = new Fortnight(kind, tries, changeFraction);
        Fortnight fresh = new Fortnight(kind, tries, 0);
        double kept = steady.week(1, true) + steady.week(2, true);
        double free = fresh.week(1, false) + fresh.week(2, false);
        return new Steadiness(kind, steady.movedPct(), fresh.movedPct(), 100 * (1 - kept / free));
    }

    private double movedPct() {
        return told == 0 ? 0 : 100.0 * moved / told;
    }

    /** Worth of all that gets seeded in a week under the weather that comes [ha]. */
    private double week(long seed, boolean keeps) {
        GeneratedDays.Size size = new GeneratedDays.Size(36, 1);
        PlanProblem truth = GeneratedDays.day(kind, seed, 36, 1);
        ForecastErrors errors = new ForecastErrors(MOST_STORMS, new SplittableRandom(seed));
        Map<String, FieldStatus> statuses = new HashMap<>();
        Optional<Plan> last = Optional.empty();
        double earnedHa = 0;
        for (int cycle = 0; cycle < CYCLES_A_WEEK; cycle++) {
            Instant asOf = truth.asOf().plus(CYCLE.multipliedBy(cycle));
            if (last.isPresent()) {
                earnedHa += work(truth, last.get(), asOf, statuses);
            }
            double hour = Duration.between(truth.horizon().from(), asOf).toMinutes() / 60.0;
            PlanProblem seen = GeneratedDays.day(kind, seed, size, w -> w.forecastAt(hour, errors));
            errors.goOn();
            PlanProblem now = now(seen, asOf, statuses, keeps ? last : Optional.empty());
            Plan plan = Planner.plan(now, Effort.tries(cycle, tries));
            last.ifPresent(before -> compare(now, before, plan));
            last = Optional.of(plan);
        }
        return earnedHa;
    }

    /** The crew does as it was told until now; what was seeded since then earns. */
    private static double work(
            PlanProblem truth, Plan plan, Instant asOf, Map<String, FieldStatus> statuses) {
        double earnedHa = 0;
        for (Job job : truth.jobs()) {
            FieldStatus before = statuses.getOrDefault(job.name(), job.field().status());
            Map<String, StageRecord> records = new HashMap<>();
            Optional<String> mix = before.sownMix();
            before.stages().forEach(r -> records.put(r.stage(), r));
            for (Told told : Told.of(plan, job.name())) {
                if (told.work.from().isBefore(asOf)) {
                    records.put(told.stage, told.record(asOf));
                    mix = told.mix.isPresent() ? told.mix : mix;
                    earnedHa += told.work.to().isAfter(asOf) ? 0 : told.earnedHa(truth, job);
                }
            }
            boolean seeded = Optional.ofNullable(
                            records.get(job.recipe().seeding().name()))
                    .filter(StageRecord::done)
                    .isPresent();
            FieldState state = seeded
                    ? FieldState.SEEDED
                    : records.isEmpty() ? FieldState.PENDING : FieldState.IN_WORK;
            statuses.put(
                    job.name(),
                    new FieldStatus(
                            state,
                            List.copyOf(records.values()),
                            seeded ? mix : Optional.empty(),
                            Optional.empty(),
                            false));
        }
        return earnedHa;
    }

    private PlanProblem now(
            PlanProblem seen,
            Instant asOf,
            Map<String, FieldStatus> statuses,
            Optional<Plan> last) {
        List<Job> jobs = new ArrayList<>();
        for (Job job : seen.jobs()) {
            jobs.add(job.with(statuses.getOrDefault(job.name(), job.field().status())));
        }
        PlanProblem.Prices prices = new PlanProblem.Prices(
                seen.prices().drivingHaPerHour(),
                seen.prices().overtimeHaPerHour(),
                changeFraction);
        return new PlanProblem(
                asOf,
                seen.horizon(),
                seen.crew(),
                jobs,
                prices,
                last,
                seen.stockHa(),
                Standing.recorded(
                        jobs.stream()
                                .map(j -> new Standing.Worked(j.field(), j.arrival()))
                                .toList(),
                        seen.crew(),
                        last,
                        asOf),
                InBoxes.recorded(
                        jobs.stream()
                                .map(j -> new InBoxes.Sown(j.field(), j.recipe()))
                                .toList(),
                        seen.crew(),
                        last,
                        asOf));
    }

    /** Counts, by the planner's own rule, what a crew would call a change of its next day. */
    private void compare(PlanProblem now, Plan before, Plan after) {
        Habits habits = Habits.of(now.withLastOrder(Optional.of(before)));
        Instant end = now.asOf().plus(NEXT_DAY);
        Set<Habits.Key> nextDay = new HashSet<>();
        Habits.Judged note = (key, was, kept) -> {
            if (was.start().isBefore(end)) {
                nextDay.add(key);
            }
        };
        habits.walk(before.items(), note);
        told += nextDay.size();
        moved += nextDay.size();
        habits.walk(
                after.items(), (key, was, kept) -> moved -= kept && nextDay.contains(key) ? 1 : 0);
    }

    /** A stage as it was told, from its first start to its last end. */
    private record Told(String stage, String machine, Window work, Optional<String> mix) {

        static List<Told> of(Plan plan, String field) {
            Map<String, Told> all = new HashMap<>();
            plan.items().stream()
                    .filter(i -> i.place().field().equals(field))
                    .forEach(i -> all.merge(
                            i.place().stage(),
                            new Told(
                                    i.place().stage(),
                                    i.hands().machine(),
                                    i.work(),
                                    i.sowing().map(PlanItem.Sowing::mix)),
                            (a, b) -> new Told(
                                    a.stage,
                                    a.machine,
                                    new Window(a.work.from(), b.work.to()),
                                    a.mix)));
            return List.copyOf(all.values());
        }

        StageRecord record(Instant asOf) {
            return new StageRecord(
                    stage,
                    Optional.of(work.from()),
                    work.to().isAfter(asOf) ? Optional.empty() : Optional.of(work.to()),
                    Optional.of(machine));
        }

        double earnedHa(PlanProblem truth, Job job) {
            HorizonMinutes minutes = HorizonMinutes.of(truth.horizon());
            return job.options().stream()
                    .filter(o -> mix.filter(o.mix()::equals).isPresent())
                    .mapToDouble(o -> job.weightHa()
                            * HourlyMean.of(
                                    o.worth(),
                                    minutes.notAfter(work.from()),
                                    minutes.notBefore(work.to())))
                    .sum();
        }
    }
}
