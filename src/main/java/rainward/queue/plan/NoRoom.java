package rainward.queue.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rainward.queue.model.BetterLater;
import rainward.queue.problem.HorizonMinutes;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;
import rainward.queue.search.Genome;
import rainward.queue.shop.Decoder;
import rainward.queue.shop.Item;
import rainward.queue.shop.Placement;
import rainward.queue.shop.Shop;

/** Says why a field that could be planned has no place in the order. */
final class NoRoom {

    private final PlanProblem problem;
    private final Shop shop;

    private NoRoom(PlanProblem problem, Shop shop) {
        this.problem = problem;
        this.shop = shop;
    }

    /**
     * Gives the reasons.
     *
     * @param problem that was planned
     * @param shop made of it, items in the order of its fields
     * @param placed indices of those that have a place
     * @param ready indices of those among them that are made ready without being seeded
     */
    static List<Plan.LeftOut> of(
            PlanProblem problem, Shop shop, Set<Integer> placed, Set<Integer> ready) {
        NoRoom noRoom = new NoRoom(problem, shop);
        List<Plan.LeftOut> all = new ArrayList<>();
        for (int i = 0; i < problem.jobs().size(); i++) {
            if (ready.contains(i) || !placed.contains(i)) {
                String why = noRoom.why(i, ready.contains(i));
                all.add(new Plan.LeftOut(problem.jobs().get(i).name(), why));
            }
        }
        return all;
    }

    private String why(int index, boolean ready) {
        Optional<String> later = BetterLater.words(problem.jobs().get(index), problem);
        return ready
                ? "is made ready; " + later.orElse("the days planned have no room for its seed")
                : later.orElseGet(() -> why(shop.items().get(index)));
    }

    private String why(Item item) {
        Optional<Integer> paying = seeding(item);
        if (paying.isPresent()) {
            return "has no room: alone it would be seeded " + words(paying.get())
                    + ", but machines and people earn more on other fields";
        }
        Item atAnyPrice = new Item(true, item.underWay(), item.chains(), item.starts());
        return seeding(atAnyPrice)
                .map(start -> "costs more in driving and overtime than it would earn, seeded "
                        + words(start)
                        + "; pin it to have it all the same")
                .orElse("its stages and waits do not fit into the open hours of the days planned,"
                        + " even with the crew to itself");
    }

    /** When the item is seeded if it has the crew to itself [min]. */
    private Optional<Integer> seeding(Item item) {
        Decoder alone = new Decoder(new Shop(
                shop.now(), shop.ways(), shop.crew(), List.of(item), shop.prices(), shop.stock()));
        return alone
                .placements(new Genome(alone.parts().row(new int[] {0}), new int[alone.genes()]))
                .stream()
                .filter(p -> p.option() >= 0)
                .findFirst()
                .map(Placement::start);
    }

    private String words(int start) {
        return problem.told(HorizonMinutes.of(problem.horizon()).at(start));
    }
}
