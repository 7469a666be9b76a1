package rainward.queue.bound;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import rainward.queue.shop.Shop;
import rainward.queue.shop.Task;

/**
 * Sets of machines that share some kind of work, and how long they are open by each hour, in
 * minutes of their fastest machine.
 */
final class BoundedWork {

    private final Shop shop;
    private final int hours;
    private final List<BitSet> classes = new ArrayList<>();
    private final List<double[]> open = new ArrayList<>();
    private final List<double[]> shift = new ArrayList<>();

    BoundedWork(Shop shop, int hours) {
        this.shop = shop;
        this.hours = hours;
        tasks().forEach(this::addClass);
        for (BitSet machines : classes) {
            open.add(new double[hours]);
            shift.add(new double[hours]);
            int last = open.size() - 1;
            machines.stream().forEach(m -> addMachine(m, machines, last));
        }
    }

    private List<Task> tasks() {
        return shop.items().stream()
                .flatMap(i -> i.chains().get(0).tasks().stream())
                .toList();
    }

    private void addClass(Task task) {
        BitSet machines = machines(task);
        if (!classes.contains(machines)) {
            classes.add(machines);
        }
    }

    private static BitSet machines(Task task) {
        BitSet machines = new BitSet();
        task.hands().forEach(h -> machines.set(h.machine()));
        return machines;
    }

    private void addMachine(int machine, BitSet machines, int to) {
        BitSet ground = new BitSet();
        BitSet shifts = new BitSet();
        double pace = 0;
        for (Task task : tasks()) {
            if (!machines(task).equals(machines)) {
                continue;
            }
            for (Task.Hand hand : task.hands()) {
                if (hand.machine() == machine) {
                    hand.open().mark(ground);
                    shop.crew().drive().get(hand.person()).mark(shifts);
                    pace = Math.max(pace, (double) fastest(task) / hand.minutes());
                }
            }
        }
        for (int h = 0; h < hours; h++) {
            open.get(to)[h] += pace * ground.get(0, 60 * h + 60).cardinality();
            shift.get(to)[h] += pace * shifts.get(0, 60 * h + 60).cardinality();
        }
    }

    /** Minutes of the fastest machine for a task. */
    static int fastest(Task task) {
        return task.hands().stream().mapToInt(Task.Hand::minutes).min().orElse(0);
    }

    Shop shop() {
        return shop;
    }

    int hours() {
        return hours;
    }

    int classes() {
        return classes.size();
    }

    int classOf(Task task) {
        return classes.indexOf(machines(task));
    }

    /** Minutes by the end of an hour in which a set of machines may work on some field. */
    double open(int machines, int hour) {
        return open.get(machines)[hour];
    }

    /** Minutes within an hour in which a set of machines may work on some field. */
    double inHour(int machines, int hour) {
        double[] sums = open.get(machines);
        return sums[hour] - (hour == 0 ? 0 : sums[hour - 1]);
    }

    /** Minutes by the end of an hour in which a set of machines may work or drive. */
    double shift(int machines, int hour) {
        return shift.get(machines)[hour];
    }

    /** Price of a minute that is used in an hour: those of all hours from it to the end. */
    static double[][] toEnd(double[][] prices) {
        double[][] sums = new double[prices.length][];
        for (int c = 0; c < prices.length; c++) {
            sums[c] = prices[c].clone();
            for (int h = sums[c].length - 2; h >= 0; h--) {
                sums[c][h] += sums[c][h + 1];
            }
        }
        return sums;
    }
}
