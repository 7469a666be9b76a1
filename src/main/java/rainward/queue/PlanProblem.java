package rainward.queue;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rainward.farm.Crew;
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
 */
public record PlanProblem(
        Instant asOf,
        Window horizon,
        Crew crew,
        List<Job> jobs,
        Prices prices,
        Optional<Plan> lastOrder) {

    public PlanProblem {
        jobs = List.copyOf(jobs);
    }

    /**
     * What an order costs beside what it earns, in hectares of full stand.
     *
     * @param drivingHaPerHour an hour of driving
     * @param overtimeHaPerHour an hour of overtime
     * @param changeFraction moving one item of the last order, as a share of the value of the plan
     */
    public record Prices(
            double drivingHaPerHour, double overtimeHaPerHour, double changeFraction) {}
}
