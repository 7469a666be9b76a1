package rainward.queue.shop;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/** Random small shops: items with two tasks, on two sites; worth falls with time. */
public final class SmallShops {

    public static final int DAYS = 3;

    private SmallShops() {}

    /**
     * A shop before it is built.
     *
     * @param items how many
     * @param machines how many can do the first task; one more does the second
     * @param shiftMinutes length of a shift
     */
    public record Size(int items, int machines, int shiftMinutes) {}

    public static Shop shop(long seed, Size size) {
        SplittableRandom random = new SplittableRandom(seed);
        int machines = size.machines() + 1;
        OpenTime open = shifts(size.shiftMinutes());
        List<Item> items = new ArrayList<>();
        for (int i = 0; i < size.items(); i++) {
            items.add(item(i, size, open, random));
        }
        int[] road = {0, 40, 40, 0};
        int[][] roads = new int[machines][];
        java.util.Arrays.fill(roads, road);
        List<OpenTime> drive = new ArrayList<>();
        for (int p = 0; p < machines; p++) {
            drive.add(open);
        }
        return new Shop(
                0,
                new Shop.Ways(2, roads, road),
                new Shop.Start(new int[machines], drive, DAYS),
                items,
                new Shop.Prices(0.0005, 0),
                new double[0]);
    }

    /** Two items, two tasks each on the same machine, with a wait between; two shifts of 10 h. */
    static Shop withWait(int waitMinutes, int workMinutes) {
        OpenTime open = new OpenTime(List.of(
                new OpenTime.Stretch(420, 1020, 1020, 0),
                new OpenTime.Stretch(1860, 2460, 2460, 1)));
        double[] worth = new double[2 * 24];
        java.util.Arrays.fill(worth, 0, workMinutes < 240 ? 48 : 24, 1);
        List<Item> items = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            Task.Waits wait = new Task.Waits(waitMinutes, Task.NO_LIMIT, new BitSet());
            List<Task.Hand> hands = List.of(new Task.Hand(0, 0, workMinutes, open));
            Task first = task(2 * i, 0, hands, Optional.empty());
            Yield yield = new Yield(1, List.of(new Yield.Option(worth, -1, 0)));
            Task second =
                    new Task(1, 0, wait, hands, Optional.of(yield), Task.Habit.none(2 * i + 1));
            items.add(new Item(
                    false,
                    List.of(),
                    List.of(new Chain(0, Task.NO_LIMIT, List.of(first, second))),
                    new int[] {0}));
        }
        return new Shop(
                0,
                new Shop.Ways(1, new int[][] {{0}}, new int[] {0}),
                new Shop.Start(new int[1], List.of(open), 2),
                items,
                new Shop.Prices(0, 0),
                new double[0]);
    }

    /** Rules that a shop may have or be rid of. */
    enum Rule {
        /** Seed within half an hour of tillage. */
        GREATEST_WAIT,
        /** Half an hour from tillage to seed. */
        LEAST_WAIT,
        /** The second place is twice as far off. */
        ROAD,
        /** Ground is shut on the first morning. */
        SHUT_GROUND,
        /** No seed on the last day. */
        LAST_DATE
    }

    /** A shop under one rule more, which it has in two places out of three. */
    static Shop under(Rule rule, Shop shop) {
        List<Item> items = new ArrayList<>();
        for (Item item : shop.items()) {
            List<Task> tasks = new ArrayList<>();
            for (Task task : item.chains().get(0).tasks()) {
                tasks.add(items.size() % 3 == 2 ? task : under(rule, task));
            }
            items.add(new Item(
                    false, List.of(), List.of(new Chain(0, Task.NO_LIMIT, tasks)), item.starts()));
        }
        int minutes = shop.ways().car()[1] * (rule == Rule.ROAD ? 2 : 1);
        int[] road = {0, minutes, minutes, 0};
        int[][] roads = new int[shop.machines()][];
        java.util.Arrays.fill(roads, road);
        return new Shop(
                shop.now(),
                new Shop.Ways(2, roads, road),
                shop.crew(),
                items,
                shop.prices(),
                shop.stock());
    }

    private static Task under(Rule rule, Task task) {
        boolean seeds = task.seeds().isPresent();
        Task.Waits waits = new Task.Waits(
                rule == Rule.LEAST_WAIT && seeds ? 30 : 0,
                rule == Rule.GREATEST_WAIT && seeds ? 30 : Task.NO_LIMIT,
                new BitSet());
        int[][] spans = {{rule == Rule.SHUT_GROUND ? 600 : 0, DAYS * 1440}};
        List<Task.Hand> hands = task.hands().stream()
                .map(h -> new Task.Hand(
                        h.machine(), h.person(), h.minutes(), h.open().within(spans)))
                .toList();
        int last = rule == Rule.LAST_DATE ? (DAYS - 1) * 24 : DAYS * 24;
        Optional<Yield> yield = task.seeds().map(y -> {
            double[] worth = new double[DAYS * 24];
            for (int h = 0; h < last; h++) {
                worth[h] = y.worth(0, 60 * h, 60 * h + 60);
            }
            return new Yield(y.weight(), List.of(new Yield.Option(worth, -1, 0)));
        });
        return new Task(task.stage(), task.site(), waits, hands, yield, task.habit());
    }

    private static OpenTime shifts(int minutes) {
        List<OpenTime.Stretch> days = new ArrayList<>();
        for (int d = 0; d < DAYS; d++) {
            int from = d * 1440 + 420;
            days.add(new OpenTime.Stretch(from, from + minutes, from + minutes, d));
        }
        return new OpenTime(days);
    }

    private static Item item(int i, Size size, OpenTime open, SplittableRandom random) {
        int site = random.nextInt(2);
        int first = random.nextInt(60, 200);
        int second = random.nextInt(60, 200);
        double fall = random.nextDouble(0.002, 0.02);
        double[] worth = new double[DAYS * 24];
        for (int h = 0; h < worth.length; h++) {
            worth[h] = Math.max(0, 1 - fall * h);
        }
        Yield yield = new Yield(random.nextDouble(0.5, 4), List.of(new Yield.Option(worth, -1, 0)));
        List<Task.Hand> tillers = new ArrayList<>();
        for (int m = 1; m <= size.machines(); m++) {
            tillers.add(new Task.Hand(m, m, first, open));
        }
        Task till = task(2 * i, site, tillers, Optional.empty());
        Task seed = task(
                2 * i + 1, site, List.of(new Task.Hand(0, 0, second, open)), Optional.of(yield));
        Chain chain = new Chain(0, Task.NO_LIMIT, List.of(till, seed));
        return new Item(false, List.of(), List.of(chain), new int[] {0});
    }

    private static Task task(int id, int site, List<Task.Hand> hands, Optional<Yield> yield) {
        return new Task(
                id % 2,
                site,
                new Task.Waits(0, Task.NO_LIMIT, new BitSet()),
                hands,
                yield,
                Task.Habit.none(id));
    }
}
