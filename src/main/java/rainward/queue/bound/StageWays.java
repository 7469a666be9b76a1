package rainward.queue.bound;

import java.util.ArrayList;
import java.util.List;
import rainward.queue.shop.OpenTime;
import rainward.queue.shop.Shop;
import rainward.queue.shop.Task;
import rainward.queue.shop.Yield;

/**
 * What one machine may do for a stage: for each open minute in which it may start, when it is free
 * again and what that earns, overtime paid. A stage that may rest over nights ends at another time
 * on days with overtime than on days without, and has a set of ways for each.
 *
 * @param stage that is done
 * @param free index of the open minute in which the machine is free again; zero: cannot start
 * @param gainHa worth x weight of what is seeded, less overtime [ha of full stand]
 * @param doneHour hour of the horizon in which the next stage may start
 */
record StageWays(BoundedStage stage, int[] free, double[] gainHa, short[] doneHour) {

    /**
     * Lists all ways.
     *
     * @param stage to be done
     * @param hand who does it
     * @param minutes of the machine
     * @param of the shop: least wait of the stage after, price of overtime, hours planned
     */
    static List<StageWays> of(BoundedStage stage, Task.Hand hand, OpenMinutes minutes, Terms of) {
        List<StageWays> all = new ArrayList<>();
        OpenTime open = hand.open();
        for (int i = 0; i < minutes.count(); i++) {
            int start = minutes.minute(i);
            int way = 0;
            List<Stint> stints =
                    start < stage.earliest() ? List.of() : Stint.from(open, start, hand.minutes());
            for (Stint stint : stints) {
                double gain = of.gainHa(stage.task(), stint);
                if (gain > Double.NEGATIVE_INFINITY) {
                    way(all, stage, minutes, way++).set(i, stint.finish(), gain, minutes, of);
                }
            }
        }
        return all;
    }

    private static StageWays way(
            List<StageWays> all, BoundedStage stage, OpenMinutes minutes, int way) {
        if (way == all.size()) {
            int n = minutes.count();
            all.add(new StageWays(stage, new int[n], new double[n], new short[n]));
        }
        return all.get(way);
    }

    private void set(int index, int finish, double gain, OpenMinutes minutes, Terms terms) {
        free[index] = Math.max(index + 1, minutes.notBefore(finish));
        gainHa[index] = gain;
        doneHour[index] =
                (short) Math.min(terms.hours() - 1, (finish + terms.leastWaitAfter()) / 60);
    }

    /**
     * What counts beside the stage itself.
     *
     * @param hours planned
     * @param leastWaitAfter it, before the next may start [min]
     * @param prices of the shop
     */
    record Terms(int hours, int leastWaitAfter, Shop.Prices prices) {

        double gainHa(Task task, Stint stint) {
            double paid = stint.overtimeMinutes() * prices.overtimePerMinute();
            return task.seeds().isEmpty() ? -paid : worthHa(task.seeds().get(), stint) - paid;
        }

        private static double worthHa(Yield yield, Stint stint) {
            double best = Double.NEGATIVE_INFINITY;
            for (int o = 0; o < yield.options(); o++) {
                double worth = stint.parts().size() == 1
                        ? yield.worth(o, stint.start(), stint.finish())
                        : yield.worth(o, stint.parts());
                best = worth > 0 ? Math.max(best, worth * yield.weight()) : best;
            }
            return best;
        }
    }
}
