package rainward.queue.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rainward.queue.search.Annealing;
import rainward.queue.search.Decoding;
import rainward.queue.search.Effort;
import rainward.queue.search.Genome;

/** One seeder, one place, one long day; mixes that take a while to change. */
class BoxesTest {

    private static final int HOURS = 48;
    private static final int CHANGE_MINUTES = 45;

    /** A field: minutes of work, mix, worth that falls to nothing at the end of the time. */
    private record Sown(int minutes, int mix, double weight) {}

    private static List<Sown> fields(SplittableRandom random, int count) {
        List<Sown> fields = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            fields.add(new Sown(
                    random.nextInt(20, 120), random.nextInt(3), random.nextDouble(0.5, 4)));
        }
        return fields;
    }

    private static double[] worth() {
        return IntStream.range(0, HOURS)
                .mapToDouble(h -> 1 - (double) h / HOURS)
                .toArray();
    }

    private static Shop shop(List<Sown> fields, int held) {
        OpenTime open = new OpenTime(List.of(new OpenTime.Stretch(0, 60 * HOURS, 60 * HOURS, 0)));
        List<Item> items = new ArrayList<>();
        for (Sown field : fields) {
            Yield yield =
                    new Yield(field.weight, List.of(new Yield.Option(worth(), -1, 0, field.mix)));
            Task seed = new Task(
                    0,
                    0,
                    new Task.Waits(0, Task.NO_LIMIT, new BitSet()),
                    List.of(new Task.Hand(0, 0, field.minutes, open)),
                    Optional.of(yield),
                    Task.Habit.none(items.size()));
            Chain chain = new Chain(0, Task.NO_LIMIT, List.of(seed));
            items.add(new Item(false, List.of(), List.of(chain), new int[] {0}));
        }
        return new Shop(
                0,
                new Shop.Ways(1, new int[][] {{0}}, new int[] {0}),
                new Shop.Start(
                        new int[1],
                        new int[] {-1},
                        List.of(open),
                        1,
                        new Shop.Seeders(new int[] {held}, new int[] {CHANGE_MINUTES})),
                items,
                new Shop.Prices(0, 0),
                new double[0]);
    }

    /**
     * Minutes, one after the other, apart from the planner: work, and a change where the mix is.
     */
    private static double valueByHand(List<Sown> fields, int[] order, int held) {
        double value = 0;
        int minute = 0;
        int holds = held;
        for (int i : order) {
            Sown field = fields.get(i);
            minute += holds >= 0 && holds != field.mix ? CHANGE_MINUTES : 0;
            double sum = 0;
            for (int m = minute; m < minute + field.minutes; m++) {
                sum += 1 - (double) (m / 60) / HOURS;
            }
            value += field.weight * sum / field.minutes;
            minute += field.minutes;
            holds = field.mix;
        }
        return value;
    }

    private static List<int[]> orders(int n) {
        if (n == 0) {
            return List.of(new int[0]);
        }
        List<int[]> all = new ArrayList<>();
        for (int[] shorter : orders(n - 1)) {
            for (int at = 0; at < n; at++) {
                int[] longer = new int[n];
                System.arraycopy(shorter, 0, longer, 0, at);
                longer[at] = n - 1;
                System.arraycopy(shorter, at, longer, at + 1, n - 1 - at);
                all.add(longer);
            }
        }
        return all;
    }

    @Test
    void everyOrderIsWorthWhatItIsByHandAndTheSearchFindsTheBest() {
        SplittableRandom random = new SplittableRandom(7);
        for (int round = 0; round < 8; round++) {
            int held = round % 4 - 1;
            List<Sown> fields = fields(random, 6);
            Decoder decoder = new Decoder(shop(fields, held));
            double best = 0;
            for (int[] order : orders(6)) {
                double value = valueByHand(fields, order, held);
                Genome genome = new Genome(order, new int[decoder.genes()]);
                assertThat(decoder.tryOut(genome, Decoding.Change.EVERYWHERE))
                        .isCloseTo(value, within(1e-9));
                best = Math.max(best, value);
            }
            Genome listed = new Genome(IntStream.range(0, 6).toArray(), new int[decoder.genes()]);
            assertThat(Annealing.search(decoder, List.of(listed), Effort.tries(1, 4_000))
                            .value())
                    .isCloseTo(best, within(1e-9));
        }
    }

    @Test
    void fieldsOfAMixTogetherNeverTakeLonger() {
        SplittableRandom random = new SplittableRandom(11);
        for (int round = 0; round < 200; round++) {
            List<Sown> fields = fields(random, 7);
            Decoder decoder = new Decoder(shop(fields, random.nextInt(-1, 3)));
            int[] any = IntStream.range(0, 7).toArray();
            int first = fields.get(0).mix;
            int[] together = Arrays.stream(any)
                    .boxed()
                    .sorted(Comparator.comparing((Integer i) -> fields.get(i).mix != first)
                            .thenComparing(i -> fields.get(i).mix))
                    .mapToInt(i -> i)
                    .toArray();
            assertThat(end(decoder, together)).isLessThanOrEqualTo(end(decoder, any));
        }
    }

    private static int end(Decoder decoder, int[] order) {
        return decoder.placements(new Genome(order, new int[decoder.genes()])).stream()
                .mapToInt(Placement::finish)
                .max()
                .orElseThrow();
    }

    /** The seeder holds the second mix; the first is worth the change only where it earns more. */
    @Test
    void theMixInTheBoxesIsSownUnlessAnotherEarnsMoreAfterTheChange() {
        assertThat(chosen(0.5)).isEqualTo(new int[] {0, 45});
        assertThat(chosen(0.999)).isEqualTo(new int[] {1, 0});
    }

    private static int[] chosen(double share) {
        double[] other = Arrays.stream(worth()).map(w -> w * share).toArray();
        Shop shop = shop(List.of(new Sown(60, 0, 1)), 1);
        Task seed = shop.items().get(0).chains().get(0).tasks().get(0);
        Yield yield = new Yield(
                1, List.of(new Yield.Option(worth(), -1, 0, 0), new Yield.Option(other, -1, 0, 1)));
        Task either =
                new Task(0, 0, seed.waits(), seed.hands(), Optional.of(yield), Task.Habit.none(0));
        Item item = new Item(
                false, List.of(), List.of(new Chain(0, Task.NO_LIMIT, List.of(either))), new int[] {
                    0
                });
        Decoder decoder = new Decoder(
                new Shop(0, shop.ways(), shop.crew(), List.of(item), shop.prices(), shop.stock()));
        Placement placed = decoder.placements(new Genome(new int[1], new int[decoder.genes()]))
                .get(0);
        return new int[] {placed.option(), placed.start()};
    }
}
