package rainward.queue.solver;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CircuitConstraint;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import com.google.ortools.util.Domain;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import rainward.queue.shop.Chain;
import rainward.queue.shop.Item;
import rainward.queue.shop.OpenTime;
import rainward.queue.shop.Placement;
import rainward.queue.shop.Shop;
import rainward.queue.shop.Task;
import rainward.queue.shop.Yield;

/**
 * The rules of a shop told to a general-purpose solver, apart from the decoder: tasks of at most
 * four hours, without overtime, each machine with a driver of its own, nothing under way. That
 * roads are driven in shifts only is left out.
 */
final class ShopModel {

    /** The solver reckons in whole numbers: so many to a hectare. */
    private static final double SCALE = 1e5;

    private final Shop shop;
    private final CpModel model = new CpModel();
    private final LinearExprBuilder value = LinearExpr.newBuilder();
    private final List<List<Node>> byMachine = new ArrayList<>();
    private final IdentityHashMap<Task, IntVar> starts = new IdentityHashMap<>();
    private final IdentityHashMap<Task.Hand, Literal> chosen = new IdentityHashMap<>();
    private final int horizon;

    ShopModel(Shop shop, int horizonMinutes) {
        Loader.loadNativeLibraries();
        this.shop = shop;
        horizon = horizonMinutes;
        for (int m = 0; m < shop.machines(); m++) {
            byMachine.add(new ArrayList<>());
        }
        shop.items().forEach(this::item);
        for (int m = 0; m < shop.machines(); m++) {
            route(m, byMachine.get(m));
        }
        model.maximize(value);
    }

    private record Node(IntVar start, int minutes, Literal here, int site) {}

    /** What the solver says. */
    record Answer(CpSolverStatus status, double valueHa) {}

    private void item(Item item) {
        List<Literal> ways = new ArrayList<>();
        for (Chain chain : item.chains()) {
            BoolVar way = model.newBoolVar("");
            ways.add(way);
            chain(chain, way);
        }
        model.addAtMostOne(ways);
    }

    private void chain(Chain chain, Literal way) {
        List<Node> before = List.of();
        for (Task task : chain.tasks()) {
            IntVar start = model.newIntVar(Math.max(0, chain.ready()), horizon, "");
            starts.put(task, start);
            List<Node> nodes = new ArrayList<>();
            LinearExprBuilder count = LinearExpr.newBuilder();
            for (Task.Hand hand : task.hands()) {
                BoolVar here = model.newBoolVar("");
                chosen.put(hand, here);
                count.add(here);
                nodes.add(new Node(start, hand.minutes(), here, task.site()));
                byMachine.get(hand.machine()).add(nodes.get(nodes.size() - 1));
                model.addLinearExpressionInDomain(start, open(hand)).onlyEnforceIf(here);
                task.seeds().ifPresent(y -> earns(y, start, hand.minutes(), here));
            }
            model.addEquality(count, way);
            if (before.isEmpty() && chain.latest() != Task.NO_LIMIT) {
                model.addLessOrEqual(start, chain.latest()).onlyEnforceIf(way);
            }
            before.forEach(node -> waits(node, task, start));
            before = nodes;
        }
    }

    private void waits(Node before, Task task, IntVar start) {
        LinearExpr waited = LinearExpr.newBuilder()
                .add(start)
                .addTerm(before.start, -1)
                .add(-before.minutes)
                .build();
        model.addGreaterOrEqual(waited, task.waits().least()).onlyEnforceIf(before.here);
        if (task.waits().greatest() != Task.NO_LIMIT) {
            model.addLessOrEqual(waited, task.waits().greatest()).onlyEnforceIf(before.here);
        }
    }

    private static Domain open(Task.Hand hand) {
        List<long[]> spans = new ArrayList<>();
        OpenTime open = hand.open();
        for (int k = 0; k < open.count(); k++) {
            if (open.regular(k) - open.from(k) >= hand.minutes()) {
                spans.add(new long[] {open.from(k), open.regular(k) - hand.minutes()});
            }
        }
        return Domain.fromIntervals(spans.toArray(long[][]::new));
    }

    private void earns(Yield yield, IntVar start, int minutes, Literal here) {
        long[] table = new long[horizon + 1];
        long most = 0;
        for (int s = 0; s + minutes <= horizon; s++) {
            double best = 0;
            for (int o = 0; o < yield.options(); o++) {
                best = Math.max(best, yield.worth(o, s, s + minutes));
            }
            table[s] = Math.round(SCALE * yield.weight() * best);
            most = Math.max(most, table[s]);
        }
        IntVar there = model.newIntVar(0, most, "");
        model.addElement(start, table, there);
        IntVar earned = model.newIntVar(0, most, "");
        model.addLessOrEqual(earned, there);
        model.addLessOrEqual(earned, LinearExpr.term(here, most));
        model.addGreaterThan(there, 0).onlyEnforceIf(here);
        value.add(earned);
    }

    private void route(int machine, List<Node> nodes) {
        CircuitConstraint circuit = model.addCircuit();
        circuit.addArc(0, 0, model.newBoolVar(""));
        for (int k = 0; k < nodes.size(); k++) {
            Node to = nodes.get(k);
            circuit.addArc(k + 1, k + 1, to.here.not());
            circuit.addArc(k + 1, 0, model.newBoolVar(""));
            int first = road(machine, shop.crew().machineSite()[machine], to.site);
            Literal begins = arc(circuit, 0, k + 1, first);
            model.addGreaterOrEqual(to.start, shop.now() + first).onlyEnforceIf(begins);
            for (int j = 0; j < nodes.size(); j++) {
                if (j != k) {
                    Node from = nodes.get(j);
                    int road = road(machine, from.site, to.site);
                    Literal follows = arc(circuit, j + 1, k + 1, road);
                    LinearExpr free = LinearExpr.newBuilder()
                            .add(from.start)
                            .add(from.minutes + road)
                            .build();
                    model.addGreaterOrEqual(to.start, free).onlyEnforceIf(follows);
                }
            }
        }
    }

    private Literal arc(CircuitConstraint circuit, int from, int to, int minutes) {
        BoolVar taken = model.newBoolVar("");
        circuit.addArc(from, to, taken);
        value.addTerm(taken, -Math.round(SCALE * minutes * shop.prices().drivingPerMinute()));
        return taken;
    }

    private int road(int machine, int from, int to) {
        return shop.ways().road()[machine][from * shop.ways().sites() + to];
    }

    /** Everything as it was placed, nothing else: is it allowed, and what is it worth? */
    Answer fixed(List<Placement> placed) {
        IdentityHashMap<Task.Hand, Placement> hands = new IdentityHashMap<>();
        placed.forEach(p -> hands.put(p.hand(), p));
        chosen.forEach((hand, here) -> model.addEquality(here, hands.containsKey(hand) ? 1 : 0));
        placed.forEach(p -> model.addEquality(starts.get(p.task()), p.start()));
        return solve();
    }

    private Answer solve() {
        CpSolver solver = new CpSolver();
        // Everything is given: the solver has to look, not to search.
        solver.getParameters().setNumWorkers(1).setCpModelPresolve(false);
        CpSolverStatus status = solver.solve(model);
        boolean found = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
        return new Answer(status, found ? solver.objectiveValue() / SCALE : Double.NaN);
    }
}
