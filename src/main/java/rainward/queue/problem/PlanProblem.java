package rainward.queue.problem;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.farm.Crew;
import rainward.farm.GeoPoint;
import rainward.farm.Require;
import rainward.farm.Window;

/**
 * All that the planner needs to know.
 *
 * @param asOf the moment of planning
 * @param horizon full hours that are planned; starts at or before {@code asOf}
 * @param crew people, machines, hours
 * @param jobs fields whose seed is still to go in
 * @param prices what driving, overtime and change cost
 * @param lastOrder the order given out before, if any
 * @param stockHa hectares that the seed in the shed is enough for, by mix; no entry: no limit [ha]
 * @param standing where machines and people are, by name; a machine without an entry stands in the
 *     yard, a person without one comes from anywhere
 * @param inBoxes mix that each seeding machine holds, by name; without an entry it is empty and set
 *     for its first mix before it sets out
 */
public record PlanProblem(
        Instant asOf,
        Window horizon,
        Crew crew,
        List<Job> jobs,
        Prices prices,
        Optional<Plan> lastOrder,
        Map<String, Double> stockHa,
        Map<String, GeoPoint> standing,
        Map<String, String> inBoxes) {

    public PlanProblem {
        jobs = List.copyOf(jobs);
        stockHa = Map.copyOf(stockHa);
        standing = Map.copyOf(standing);
        inBoxes = Map.copyOf(inBoxes);
        Require.that(
                horizon.from().getEpochSecond() % 3600 == 0 && horizon.from().getNano() == 0,
                "horizon starts at " + horizon.from() + ", must be a full hour");
        Require.that(
                !horizon.from().isAfter(asOf) && asOf.isBefore(horizon.to()),
                "horizon " + horizon + " does not hold the moment of planning " + asOf);
    }

    /** A problem with seed enough of everything and the machines in the yard, empty. */
    public PlanProblem(
            Instant asOf,
            Window horizon,
            Crew crew,
            List<Job> jobs,
            Prices prices,
            Optional<Plan> lastOrder) {
        this(asOf, horizon, crew, jobs, prices, lastOrder, Map.of(), Map.of(), Map.of());
    }

    /** The same with other fields. */
    public PlanProblem withJobs(List<Job> others) {
        return new PlanProblem(
                asOf, horizon, crew, others, prices, lastOrder, stockHa, standing, inBoxes);
    }

    /** The same with another crew. */
    public PlanProblem withCrew(Crew other) {
        return new PlanProblem(
                asOf, horizon, other, jobs, prices, lastOrder, stockHa, standing, inBoxes);
    }

    /** The same after another order was given out. */
    public PlanProblem withLastOrder(Optional<Plan> other) {
        return new PlanProblem(
                asOf, horizon, crew, jobs, prices, other, stockHa, standing, inBoxes);
    }

    /** The same with people and machines elsewhere, and other mixes in the boxes. */
    public PlanProblem withStanding(Map<String, GeoPoint> others, Map<String, String> boxes) {
        return new PlanProblem(
                asOf, horizon, crew, jobs, prices, lastOrder, stockHa, others, boxes);
    }

    /** A moment of the days planned as the crew says it. */
    public String told(Instant instant) {
        return crew.clock().near(instant, asOf);
    }

    /** Full or begun hours of the horizon. */
    public int hours() {
        return (int) ((horizon.length().toMinutes() + 59) / 60);
    }

    /**
     * What an order costs beside what it earns, in hectares of full stand.
     *
     * @param drivingHaPerHour an hour of driving
     * @param overtimeHaPerHour an hour of overtime
     * @param changeFraction moving one item of the last order, as a share of the value of the plan
     */
    public record Prices(double drivingHaPerHour, double overtimeHaPerHour, double changeFraction) {

        public Prices {
            Require.notNegative("drivingHaPerHour", drivingHaPerHour);
            Require.notNegative("overtimeHaPerHour", overtimeHaPerHour);
            Require.notNegative("changeFraction", changeFraction);
        }
    }
}
