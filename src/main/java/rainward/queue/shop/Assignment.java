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
    private final Boxes boxes;
    private final boolean[] overtime;
    private final List<Placement> recorded = new ArrayList<>();
    private boolean recording;
    private int[] row = new int[0];
    private double[] sums = new double[0];
    private int start;
    private int finish;
    private int drive;
    private int setting;
    private int startBefore;

    Assignment(Shop shop, Hands hands) {
        this.shop = shop;
        this.hands = hands;
        boxes = new Boxes(shop, hands);
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

    /** Places a task that goes on now, so that its machine is set; false where nobody can do it. */
    boolean goOn(int item, Task task) {
        boxes.areSet(true);
        boolean ends = assign(item, task, shop.now());
        boxes.areSet(false);
        return ends;
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
        int option = seeds ? sow(task.seeds().get(), hand, ready) : -1;
        if (seeds && option < 0) {
            return false;
        }
        charge(task, hand);
        hands.finish(row, task, hand, finish);
        if (recording) {
            recorded.add(new Placement(item, task, hand, start, finish, drive, setting, option));
        }
        return true;
    }

    private int bestHand(Task task, int ready) {
        int best = -1;
        long bestKey = Long.MAX_VALUE;
        for (int h = 0; h < task.hands().size(); h++) {
            Task.Hand hand = task.hands().get(h);
            int road = road(hand.machine(), task.site());
            int change = boxes.leastChange(row, hand.machine(), task);
            int arrival = arrival(hand, road, change);
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
                setting = change;
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

    /** When the machine is there and set; below zero where it cannot be. */
    private int arrival(Task.Hand hand, int road, int change) {
        int ready = hands.together(row, hand.machine(), hand.person(), shop.ways());
        if (road == 0 && change == 0) {
            return ready;
        }
        OpenTime shift = shop.crew().drive().get(hand.person());
        int there = inOneGo(shift, ready, road);
        return there < 0 ? there : inOneGo(shift, there, change);
    }

    private int inOneGo(OpenTime shift, int ready, int minutes) {
        if (minutes == 0) {
            return ready;
        }
        int begin = Fit.departure(shift, ready, minutes, overtime);
        return begin < 0 ? begin : begin + minutes;
    }

    /** Chooses what to sow; another mix than the machine holds goes in after it is set for it. */
    private int sow(Yield yield, Task.Hand hand, int ready) {
        int best = -1;
        double bestWorth = 0;
        boolean sought = false;
        boolean fits = false;
        for (int o = 0; o < yield.options(); o++) {
            Yield.Option option = yield.option(o);
            if (option.stock() >= 0 && sums[1 + option.stock()] < option.stockTaken()) {
                continue;
            }
            int change = boxes.change(row, hand.machine(), option.mix());
            boolean later = change > setting;
            if (later && !sought) {
                sought = true;
                fits = fitsAfter(hand, change, ready);
            }
            if (later && !fits) {
                continue;
            }
            double worth = later
                    ? worth(yield, o, hand, fit.start(), fit.finish())
                    : worth(yield, o, hand, start, finish);
            if (worth > bestWorth) {
                bestWorth = worth;
                best = o;
            }
        }
        if (best >= 0) {
            take(yield, best, bestWorth, hand);
        }
        return best;
    }

    private boolean fitsAfter(Task.Hand hand, int change, int ready) {
        int set = arrival(hand, drive, change);
        return set >= 0 && fit.find(hand.open(), Math.max(set, ready), hand.minutes(), overtime);
    }

    private void take(Yield yield, int best, double worth, Task.Hand hand) {
        Yield.Option option = yield.option(best);
        int change = boxes.change(row, hand.machine(), option.mix());
        if (change > setting) {
            setting = change;
            start = fit.start();
            finish = fit.finish();
        }
        boxes.fill(row, hand.machine(), option.mix());
        sums[0] += yield.weight() * worth;
        if (option.stock() >= 0) {
            sums[1 + option.stock()] -= option.stockTaken();
        }
    }

    private double worth(Yield yield, int option, Task.Hand hand, int from, int to) {
        if (to - from == hand.minutes()) {
            return yield.worth(option, from, to);
        }
        return yield.worth(option, hand.open().parts(from, to, overtime));
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
