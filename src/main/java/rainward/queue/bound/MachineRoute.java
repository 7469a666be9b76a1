package rainward.queue.bound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import rainward.queue.shop.OpenTime;
import rainward.queue.shop.Shop;
import rainward.queue.shop.Task;

/**
 * The best way of one machine through minutes and places at given prices of stages: it may wait,
 * drive, or do any stage of the place where it stands, even one that it has done already, but not
 * the same one twice in a row.
 */
final class MachineRoute {

    private static final int WAIT = -1;

    private final OpenMinutes minutes;
    private final StageWays[][] ways;
    private final int[][] driveMinutes;
    private final double drivingPrice;
    private final int startSite;
    private final int start;
    private final Onward[] onward;
    private final int[] hour;

    private MachineRoute(
            int machine, Shop shop, OpenMinutes minutes, List<List<StageWays>> atSite) {
        this.minutes = minutes;
        List<Integer> sites = new ArrayList<>();
        int standing = shop.crew().machineSite()[machine];
        for (int s = 0; s < atSite.size(); s++) {
            if (s == standing || !atSite.get(s).isEmpty()) {
                sites.add(s);
            }
        }
        startSite = sites.indexOf(standing);
        ways = new StageWays[sites.size()][];
        driveMinutes = new int[sites.size()][sites.size()];
        for (int a = 0; a < sites.size(); a++) {
            ways[a] = atSite.get(sites.get(a)).toArray(StageWays[]::new);
            for (int b = 0; b < sites.size(); b++) {
                int way = sites.get(a) * shop.ways().sites() + sites.get(b);
                driveMinutes[a][b] = shop.ways().road()[machine][way];
            }
        }
        drivingPrice = shop.prices().drivingPerMinute();
        start = minutes.notBefore(shop.now());
        onward = new Onward[sites.size()];
        Arrays.setAll(onward, s -> new Onward(minutes.count()));
        hour = new int[minutes.count()];
        for (int i = 0; i < hour.length; i++) {
            hour[i] = minutes.minute(i) / 60;
        }
    }

    /** Reads what a machine can do, and where. */
    static MachineRoute of(
            int machine, Shop shop, List<BoundedStage> stages, RouteBound.Grid grid) {
        Reader reader = new Reader(machine, shop, grid);
        OpenMinutes minutes = reader.minutes(stages);
        List<List<StageWays>> atSite = new ArrayList<>();
        for (int s = 0; s < shop.ways().sites(); s++) {
            atSite.add(new ArrayList<>());
        }
        for (BoundedStage stage : stages) {
            int wait = stage.last()
                    ? 0
                    : stages.get(stage.index() + 1).task().waits().least();
            atSite.get(stage.task().site()).addAll(reader.ways(stage, wait, minutes));
        }
        return new MachineRoute(machine, shop, minutes, atSite);
    }

    /** Reads stages for one machine. */
    private record Reader(int machine, Shop shop, RouteBound.Grid grid) {

        OpenMinutes minutes(List<BoundedStage> stages) {
            Set<OpenTime> work = new LinkedHashSet<>();
            Set<OpenTime> drive = new LinkedHashSet<>();
            for (BoundedStage stage : stages) {
                for (Task.Hand hand : stage.task().hands()) {
                    if (hand.machine() == machine) {
                        work.add(hand.open());
                        drive.add(shop.crew().drive().get(hand.person()));
                    }
                }
            }
            return new OpenMinutes(List.copyOf(work), List.copyOf(drive), grid.minutes());
        }

        List<StageWays> ways(BoundedStage stage, int wait, OpenMinutes minutes) {
            StageWays.Terms terms = new StageWays.Terms(grid.hours(), wait, shop.prices());
            Set<OpenTime> seen = new LinkedHashSet<>();
            List<StageWays> ways = new ArrayList<>();
            for (Task.Hand hand : stage.task().hands()) {
                if (hand.machine() == machine && seen.add(hand.open())) {
                    ways.addAll(StageWays.of(stage, hand, minutes, terms));
                }
            }
            return ways;
        }
    }

    /** Best value at the prices. */
    double solve(StagePrices prices) {
        int n = minutes.count();
        for (int i = n - 1; i >= start; i--) {
            for (int s = 0; s < ways.length; s++) {
                work(s, i, prices);
            }
            for (int s = 0; s < ways.length; s++) {
                drive(s, i);
            }
        }
        return start < n ? onward[startSite].value(0, start) : 0;
    }

    private void work(int s, int i, StagePrices prices) {
        Onward here = onward[s];
        here.pass(i, WAIT);
        for (int w = 0; w < ways[s].length; w++) {
            StageWays way = ways[s][w];
            int free = way.free()[i];
            if (free > 0) {
                BoundedStage stage = way.stage();
                int rank = here.rankWithout(stage.index(), free);
                double value = way.gainHa()[i]
                        - prices.start(stage, hour[i])
                        + prices.done(stage, way.doneHour()[i])
                        + here.value(rank, free);
                here.offer(i, value, stage.index(), w, rank);
            }
        }
    }

    private void drive(int s, int i) {
        int until = minutes.driveUntil(i);
        for (int to = 0; to < ways.length; to++) {
            int arrival = minutes.minute(i) + driveMinutes[s][to];
            if (to != s && arrival <= until) {
                int at = Math.max(i + 1, minutes.notBefore(arrival));
                double paid = drivingPrice * driveMinutes[s][to];
                for (int rank = 0; rank < 2; rank++) {
                    double value = onward[to].value(rank, at) - paid;
                    int first = onward[to].stage(rank, at);
                    onward[s].offer(i, value, first, ways[s].length + to, rank);
                }
            }
        }
    }

    /** Tells the prices what the best way found last does. */
    void walk(StagePrices prices) {
        int s = startSite;
        int i = start;
        int rank = 0;
        while (i < minutes.count()) {
            int what = onward[s].choice(rank, i);
            rank = onward[s].rankAfter(rank, i);
            if (what == WAIT) {
                i++;
            } else if (what < ways[s].length) {
                StageWays way = ways[s][what];
                prices.use(way.stage(), hour[i], way.doneHour()[i]);
                i = way.free()[i];
            } else {
                int to = what - ways[s].length;
                i = Math.max(i + 1, minutes.notBefore(minutes.minute(i) + driveMinutes[s][to]));
                s = to;
            }
        }
    }
}
