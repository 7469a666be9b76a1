package rainward.queue.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import rainward.queue.model.Screening;
import rainward.queue.model.ShopBuilder;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;
import rainward.queue.search.Annealing;
import rainward.queue.search.Effort;
import rainward.queue.search.Genome;
import rainward.queue.shop.Decoder;
import rainward.queue.shop.Placement;
import rainward.queue.shop.Shop;

/**
 * Finds the order that gets the most ground established: fields are put in a row, each is given the
 * earliest machine, person and hours that keep all rules, and simulated annealing improves the row.
 */
public final class Planner {

    private Planner() {}

    /**
     * Plans what can be planned and names what cannot, with why.
     *
     * @param problem fields, crew, prices, the last order
     * @param effort how long, with which random numbers; equal numbers of tries give equal plans
     * @return the best order found
     */
    public static Plan plan(PlanProblem problem, Effort effort) {
        PlanProblem sorted = ShopBuilder.inOrder(problem, problem.jobs());
        Screening.Screened screened = Screening.of(sorted);
        PlanProblem whole = ShopBuilder.inOrder(problem, screened.fit());
        List<PlanProblem> groups = Groups.of(whole);
        List<PlanReader.Placed> placed = new ArrayList<>();
        List<Plan.LeftOut> leftOut = new ArrayList<>(screened.unfit());
        double done = 0;
        for (int g = 0; g < groups.size(); g++) {
            double share = (double) groups.get(g).jobs().size() / whole.jobs().size();
            double end = g == groups.size() - 1 ? 1 : done + share;
            Effort slice = effort.slice(done, end, effort.seed() + g)
                    .forTriesThatCost((double) groups.get(g).jobs().size() / Groups.FIELDS);
            Searched one = search(groups.get(g), whole, slice);
            placed.addAll(one.placed());
            leftOut.addAll(one.leftOut());
            done = end;
        }
        leftOut.sort(Comparator.comparing(Plan.LeftOut::field));
        return new PlanReader(whole, new KeptSeed(sorted)).plan(placed, leftOut);
    }

    /**
     * The last order given out, kept as well as it still can be: its fields in their old order,
     * each as early as the rules allow now.
     */
    public static Plan keep(PlanProblem problem) {
        return plan(problem, Effort.tries(0, LastOrder.STARTS));
    }

    /** What became of one group. */
    private record Searched(List<PlanReader.Placed> placed, List<Plan.LeftOut> leftOut) {}

    private static Searched search(PlanProblem group, PlanProblem whole, Effort effort) {
        if (group.jobs().isEmpty()) {
            return new Searched(List.of(), List.of());
        }
        Shop shop = ShopBuilder.build(group);
        Decoder decoder = new Decoder(shop);
        Genome best =
                Annealing.search(decoder, Starts.of(group, decoder), effort).best();
        boolean[] overtime = decoder.overtime(best);
        List<PlanReader.Placed> placed = new ArrayList<>();
        Set<Integer> items = new HashSet<>();
        List<Placement> found = decoder.placements(best);
        for (Placement p : found) {
            items.add(p.item());
            placed.add(new PlanReader.Placed(
                    group.jobs().get(p.item()), Groups.inWhole(p, group, whole), overtime));
        }
        return new Searched(placed, NoRoom.of(group, shop, items, ready(shop, found)));
    }

    /** Items with work on them that does not lead to seed. */
    private static Set<Integer> ready(Shop shop, List<Placement> found) {
        Set<Integer> ready = new HashSet<>();
        for (Placement p : found) {
            if (!shop.items().get(p.item()).underWay().contains(p.task())) {
                ready.add(p.item());
            }
        }
        found.stream().filter(p -> p.option() >= 0).forEach(p -> ready.remove(p.item()));
        return ready;
    }
}
