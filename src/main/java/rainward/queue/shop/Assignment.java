package rainward.queue.shop;

import java.util.ArrayList;
import java.util.List;

/** Gives one task after another to the machine and person who finish it first. */
final class Assignment {

    private static final int KEY_SCALE = 1024;

    /** A machine that was told to do it goes before all others, where it can do it as told. */
    private static final long KEPT_FIRST = Long.MAX_VALUE / 2;

    private final Shop shop;
    private final Hands hands;
    private final Fit fit = new Fit();
    private final boolean[] overtime;
    private final List<Placement> recorded = new ArrayList<>();
    private boolean recording;
    private int[] row = new int[0];
    private double[] sums = new double[0];
    private int start;
    private int finish;
    private int drive;
    private int startBefore;

    Assignment(Shop shop, Hands hands) {
        this.shop = shop;
        this.hands = hands;
        overtime = new boolean[shop.crew().days()];
    }

    /** Reads the genes of the days, which follow those of the items. */
    void useOvertime(int[] choices, int items) {
        for (int d = 0; d < overtime.length; d++) {
            overtime[d] = choices[items + d] == 0;
        }
    }

    boolean[] overtime() {
        return overtime.clone();
    }

    /** Works on a state: the rows are changed in place. */
    void on(int[] newRow, double[] newSums) {
        row = newRow;
        sums = newSums;
    }

    void record(boolean yes) {
        recording = yes;
        recorded.clear();
    }

    List<Placement> recorded() {
        return recorded;
    }

    /** Drops what was recorded of an item whose chain did not work out. */
    void forget(int item) {
        if (recording) {
            recorded.removeIf(p -> p.item() == item && !underWay(p));
        }
    }

    /** Drops what was recorded of a chain that is tried anew. */
    void forget(int item, Chain chain) {
        if (recording) {
            recorded.removeIf(p -> p.item() == item && chain.tasks().contains(p.task()));
        }
    }

    private boolean underWay(Placement placement) {
        return shop.items().get(placement.item()).underWay().contains(placement.task());
    }

    int start() {
        return start;
    }

    int finish() {
        return finish;
    }

    /** Start of the task assigned before the last one [min]. */
    int startBefore() {
        return startBefore;
    }

    int noted(int index) {
        return hands.noted(row, index);
    }

    void earn(double ha) {
        sums[0] += ha;
    }

    /** Value so far. */
    double sum() {
        return sums[0];
    }

    /** Places a task not before {@code ready}; false where nobody can do it in time. */
    boolean assign(int item, Task task, int ready) {
        startBefore = start;
        int best = bestHand(task, ready);
        if (best < 0) {
            return false;
        }
        Task.Hand hand = task.hands().get(best);
        boolean seeds = task.seeds().isPresent();
        int option = seeds ? sow(task.seeds().get(), hand) : -1;
        if (seeds && option < 0) {
            return false;
        }
        charge(task, hand);
        hands.finish(row, task, hand, finish);
        if (recording) {
            recorded.add(new Placement(item, task, hand, start, finish, drive, option));
        }
        return true;
    }

    private int bestHand(Task task, int ready) {
        int best = -1;
        long bestKey = Long.MAX_VALUE;
        for (int h = 0; h < task.hands().size(); h++) {
            Task.Hand hand = task.hands().get(h);
            int road = road(hand.machine(), task.site());
            int arrival = arrival(hand, road);
            if (arrival < 0) {
                continue;
            }
            if (!fit.find(hand.open(), Math.max(arrival, ready), hand.minutes(), overtime)) {
                continue;
            }
            long key = (long) fit.finish() * KEY_SCALE + Math.min(road, KEY_SCALE - 1);
            if (keeps(task.habit(), hand.machine(), fit.start())) {
                key -= KEPT_FIRST;
            }
            if (key < bestKey) {
                bestKey = key;
                best = h;
                start = fit.start();
                finish = fit.finish();
                drive = road;
            }
        }
        return best;
    }

    private boolean keeps(Task.Habit habit, int machine, int begin) {
        return habit.machine() == machine
                && habit.keptBy(machine, hands.lastTask(row, machine), begin);
    }

    private int road(int machine, int site) {
        int from = hands.machineSite(row, machine);
        return shop.ways().road()[machine][from * shop.ways().sites() + site];
    }

    private int arrival(Task.Hand hand, int road) {
        int ready = hands.together(row, hand.machine(), hand.person(), shop.ways());
        if (road == 0) {
            return ready;
        }
        OpenTime roads = shop.crew().drive().get(hand.person());
        int departure = Fit.departure(roads, ready, road, overtime);
        return departure < 0 ? departure : departure + road;
    }

    private int sow(Yield yield, Task.Hand hand) {
        int best = -1;
        double bestWorth = 0;
        for (int o = 0; o < yield.options(); o++) {
            Yield.Option option = yield.option(o);
            if (option.stock() >= 0 && sums[1 + option.stock()] < option.stockTaken()) {
                continue;
            }
            double worth = worth(yield, o, hand);
            if (worth > bestWorth) {
                bestWorth = worth;
                best = o;
            }
        }
        if (best >= 0) {
            sums[0] += yield.weight() * bestWorth;
            int stock = yield.option(best).stock();
            if (stock >= 0) {
                sums[1 + stock] -= yield.option(best).stockTaken();
            }
        }
        return best;
    }

    private double worth(Yield yield, int option, Task.Hand hand) {
        if (finish - start == hand.minutes()) {
            return yield.worth(option, start, finish);
        }
        return yield.worth(option, hand.open().parts(start, finish, overtime));
    }

    private void charge(Task task, Task.Hand hand) {
        sums[0] -= drive * shop.prices().drivingPerMinute();
        sums[0] -= overtimeWorked(hand) * shop.prices().overtimePerMinute();
        int after = hands.lastTask(row, hand.machine());
        if (task.habit().machine() >= 0 && task.habit().keptBy(hand.machine(), after, start)) {
            sums[0] += task.habit().price();
        }
    }

    private int overtimeWorked(Task.Hand hand) {
        return shop.prices().overtimePerMinute() == 0
                ? 0
                : hand.open().overtimeMinutes(start, finish, overtime);
    }
}
