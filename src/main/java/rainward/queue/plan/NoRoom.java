package rainward.queue.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rainward.queue.model.ShopBuilder;
import rainward.queue.problem.HorizonMinutes;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;
import rainward.queue.problem.Words;
import rainward.queue.search.Genome;
import rainward.queue.shop.Decoder;
import rainward.queue.shop.Placement;

/** Says why a field that could be planned has no place in the order. */
final class NoRoom {

    private NoRoom() {}

    static List<Plan.LeftOut> of(PlanProblem problem, Set<String> placed) {
        List<Plan.LeftOut> all = new ArrayList<>();
        for (Job job : problem.jobs()) {
            if (!placed.contains(job.name())) {
                all.add(new Plan.LeftOut(job.name(), why(problem, job)));
            }
        }
        return all;
    }

    private static String why(PlanProblem problem, Job job) {
        PlanProblem alone = ShopBuilder.inOrder(problem, List.of(job));
        Decoder decoder = new Decoder(ShopBuilder.build(alone));
        Genome only = new Genome(new int[] {0}, new int[decoder.genes()]);
        Optional<Placement> seeding =
                decoder.placements(only).stream().filter(p -> p.option() >= 0).findFirst();
        if (seeding.isEmpty()) {
            return "its stages and waits do not fit into the open hours of the days planned,"
                    + " even with the crew to itself";
        }
        int start = seeding.get().start();
        return "has no room: alone it would be seeded "
                + HorizonMinutes.of(problem.horizon())
                        .at(start)
                        .atZone(problem.crew().zone())
                        .format(Words.DAY_AND_HOUR)
                + ", but machines and people earn more on other fields";
    }
}
