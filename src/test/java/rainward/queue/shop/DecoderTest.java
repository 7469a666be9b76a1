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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rainward.queue.search.Annealing;
import rainward.queue.search.Decoding;
import rainward.queue.search.Effort;
import rainward.queue.search.Genome;

class DecoderTest {

    private static Annealing.Found search(Shop shop, long seed, long tries) {
        Decoder decoder = new Decoder(shop);
        Genome start = new Genome(
                decoder.parts().row(IntStream.range(0, shop.items().size()).toArray()),
                new int[decoder.genes()]);
        return Annealing.search(decoder, List.of(start), Effort.tries(seed, tries));
    }

    @Test
    void aPartlyDecodedOrderIsWorthWhatTheWholeOneIs() {
        for (long seed = 0; seed < 20; seed++) {
            Shop shop = SmallShops.shop(seed, new SmallShops.Size(9, 2, 500));
            Annealing.Found found = search(shop, seed, 2_000);
            double whole = new Decoder(shop).tryOut(found.best(), Decoding.Change.EVERYWHERE);
            assertThat(found.value()).isCloseTo(whole, within(1e-9));
        }
    }

    /** While one field rests between its stages, its machine works on the next. */
    @Test
    void aLongWaitIsFilledWithOtherWork() {
        Shop shop = SmallShops.withWait(240, 60);
        Decoder decoder = new Decoder(shop);
        assertThat(decoder.places()).isEqualTo(4);
        Genome inTurn = new Genome(new int[] {0, 1, 0, 1}, new int[decoder.genes()]);
        Genome oneByOne = new Genome(new int[] {0, 0, 1, 1}, new int[decoder.genes()]);
        assertThat(decoder.placements(inTurn).stream().mapToInt(Placement::finish))
                .containsExactlyInAnyOrder(480, 540, 780, 840);
        assertThat(decoder.placements(oneByOne).stream().mapToInt(Placement::finish))
                .containsExactlyInAnyOrder(480, 780, 840, 1_920);
    }

    @Test
    void tenPartsOfAnItemFollowEachOther() {
        Shop shop = oneItem(10);
        Decoder decoder = new Decoder(shop);
        assertThat(decoder.places()).isEqualTo(10);
        Genome inTurn = new Genome(new int[10], new int[decoder.genes()]);
        assertThat(decoder.placements(inTurn).stream().mapToInt(Placement::start))
                .containsExactly(0, 70, 140, 210, 280, 350, 420, 490, 560, 630);
    }

    /** An item that is begun and cannot be finished is left out, and takes nobody's time. */
    @Test
    void anItemThatCannotBeFinishedIsNotBegun() {
        Shop shop = SmallShops.withWait(60, 240);
        Decoder decoder = new Decoder(shop);
        Genome inTurn = new Genome(new int[] {0, 1, 0, 1}, new int[decoder.genes()]);
        assertThat(decoder.tryOut(inTurn, Decoding.Change.EVERYWHERE)).isZero();
        assertThat(decoder.placements(inTurn)).allMatch(p -> p.item() == 0).hasSize(2);
    }

    /** The drive costs 1.2 ha of stand: no field pays for it alone, two do together. */
    @Test
    void fieldsThatPayForTheDriveTogetherAreBothTaken() {
        assertThat(taken(drivenTo(1.2, 0, 1, 1))).containsExactly(0, 1);
        assertThat(taken(drivenTo(1.2, 0, 1))).isEmpty();
    }

    /** What the second field is worth falls by the hour that the first one takes. */
    @Test
    void fieldsThatDoNotPayForTheDriveTogetherAreAllLeftOut() {
        assertThat(taken(drivenTo(1.2, 0, 0.7, 0.7))).containsExactly(0, 1);
        assertThat(taken(drivenTo(1.2, 0.4, 0.7, 0.7))).isEmpty();
        assertThat(taken(drivenTo(1.2, 0, 0.3, 0.3, 0.3))).isEmpty();
    }

    private static int[] taken(Shop shop) {
        Decoder decoder = new Decoder(shop);
        int[] listed = IntStream.range(0, shop.items().size()).toArray();
        return decoder.placements(new Genome(listed, new int[decoder.genes()])).stream()
                .mapToInt(Placement::item)
                .toArray();
    }

    @Test
    void upToEightItemsTheSearchFindsTheBestOfAllOrders() {
        for (int items = 5; items <= 8; items++) {
            Shop shop = SmallShops.shop(100 + items, new SmallShops.Size(items, 2, 420));
            double exact = ExactBest.overOrders(shop);
            assertThat(search(shop, 1, 8_000).value()).isCloseTo(exact, within(1e-9));
        }
    }

    @Test
    void oneMachineMoreNeverLowersTheExactBest() {
        for (long seed = 0; seed < 8; seed++) {
            double one = ExactBest.overOrdersAndHands(
                    SmallShops.shop(seed, new SmallShops.Size(5, 1, 360)));
            double two = ExactBest.overOrdersAndHands(
                    SmallShops.shop(seed, new SmallShops.Size(5, 2, 360)));
            assertThat(two).isGreaterThanOrEqualTo(one - 1e-9);
        }
    }

    @Test
    void anHourMoreNeverLowersTheExactBest() {
        for (long seed = 0; seed < 8; seed++) {
            double shorter = ExactBest.overOrdersAndHands(
                    SmallShops.shop(seed, new SmallShops.Size(5, 1, 360)));
            double longer = ExactBest.overOrdersAndHands(
                    SmallShops.shop(seed, new SmallShops.Size(5, 1, 420)));
            assertThat(longer).isGreaterThanOrEqualTo(shorter - 1e-9);
        }
    }

    @ParameterizedTest
    @EnumSource(SmallShops.Rule.class)
    void oneRuleLessNeverLowersTheExactBest(SmallShops.Rule rule) {
        double lost = 0;
        for (long seed = 0; seed < 8; seed++) {
            Shop free = SmallShops.shop(seed, new SmallShops.Size(5, 1, 360));
            Shop bound = SmallShops.under(rule, free);
            double without = ExactBest.overOrdersAndHands(free);
            double under = ExactBest.overOrdersAndHands(bound);
            assertThat(without).as("seed %s", seed).isGreaterThanOrEqualTo(under - 1e-9);
            lost += without - under;
        }
        assertThat(lost).as("the rule matters somewhere").isPositive();
    }

    /**
     * Smith (1956): one machine, no travel: weighted completion is least in order of time/weight.
     */
    @Test
    void oneMachineWithoutTravelEndsAsSmithsRuleSays() {
        SplittableRandom random = new SplittableRandom(1956);
        for (int run = 0; run < 10; run++) {
            int[] minutes =
                    IntStream.range(0, 9).map(i -> random.nextInt(30, 200)).toArray();
            double[] weights = random.doubles(9, 0.5, 4).toArray();
            Shop shop = oneMachine(minutes, weights);
            int[] smith = IntStream.range(0, 9)
                    .boxed()
                    .sorted(Comparator.comparingDouble(i -> minutes[i] / weights[i]))
                    .mapToInt(i -> i)
                    .toArray();
            Decoder decoder = new Decoder(shop);
            double best = decoder.tryOut(
                    new Genome(smith, new int[decoder.genes()]), Decoding.Change.EVERYWHERE);
            assertThat(search(shop, run, 20_000).value()).isCloseTo(best, within(0.0005 * best));
            assertThat(search(shop, run, 20_000).value()).isLessThanOrEqualTo(best * 1.0005);
        }
    }

    /** Ten minutes of work and an hour's wait, again and again; the last sows. */
    private static Shop oneItem(int tasks) {
        OpenTime open = new OpenTime(List.of(new OpenTime.Stretch(0, 3_000, 3_000, 0)));
        double[] worth = new double[50];
        Arrays.fill(worth, 1);
        Yield yield = new Yield(1, List.of(new Yield.Option(worth, -1, 0)));
        List<Task> chain = new ArrayList<>();
        for (int t = 0; t < tasks; t++) {
            chain.add(new Task(
                    t,
                    0,
                    new Task.Waits(t == 0 ? 0 : 60, Task.NO_LIMIT, new BitSet()),
                    List.of(new Task.Hand(0, 0, 10, open)),
                    t == tasks - 1 ? Optional.of(yield) : Optional.empty(),
                    Task.Habit.none(t)));
        }
        return shop(
                open,
                List.of(new Item(
                        false, List.of(), List.of(new Chain(0, Task.NO_LIMIT, chain)), new int[] {0
                        })));
    }

    /** Worth falls in a straight line, by hours as fine as the model has them. */
    private static Shop oneMachine(int[] minutes, double[] weights) {
        return oneMachine(minutes, weights, 0.01, 0);
    }

    private static Shop oneMachine(int[] minutes, double[] weights, double fall, int site) {
        OpenTime open = new OpenTime(List.of(new OpenTime.Stretch(0, 3_000, 3_000, 0)));
        double[] worth = new double[50];
        Arrays.setAll(worth, h -> Math.max(0, 1 - fall * h));
        List<Item> items = new ArrayList<>();
        for (int i = 0; i < minutes.length; i++) {
            Yield yield = new Yield(weights[i], List.of(new Yield.Option(worth, -1, 0)));
            Task task = new Task(
                    0,
                    site,
                    new Task.Waits(0, Task.NO_LIMIT, new BitSet()),
                    List.of(new Task.Hand(0, 0, minutes[i], open)),
                    Optional.of(yield),
                    Task.Habit.none(i));
            Chain chain = new Chain(0, Task.NO_LIMIT, List.of(task));
            items.add(new Item(false, List.of(), List.of(chain), new int[] {0}));
        }
        return shop(open, items);
    }

    /** Fields worth {@code weights}, falling by the hour, an hour's work each, after one drive. */
    private static Shop drivenTo(double costHa, double fall, double... weights) {
        int road = 30;
        int[] hour = new int[weights.length];
        Arrays.fill(hour, 60);
        Shop near = oneMachine(hour, weights, fall, 1);
        int[] roads = {0, road, road, 0};
        return new Shop(
                near.now(),
                new Shop.Ways(2, new int[][] {roads}, roads),
                near.crew(),
                near.items(),
                new Shop.Prices(costHa / road, 0),
                near.stock());
    }

    private static Shop shop(OpenTime open, List<Item> items) {
        return new Shop(
                0,
                new Shop.Ways(1, new int[][] {{0}}, new int[] {0}),
                new Shop.Start(new int[1], List.of(open), 1),
                items,
                new Shop.Prices(0, 0),
                new double[0]);
    }
}
