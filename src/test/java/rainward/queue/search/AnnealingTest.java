package rainward.queue.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import rainward.queue.shop.FlowShop;

/** The search core on problems whose best answer is published. */
class AnnealingTest {

    private static final Path CERTIFICATES = Path.of("../shared/tables/flowshop_certificates.csv");

    /**
     * Seed of the first instance of 20 jobs on 5 machines, from memory; the certificate confirms
     * it.
     */
    private static final long TA001 = 873_654_221;

    /** An order that reaches the published optimum of 1278 (Taillard 1993). */
    private static final int[] TA001_BEST = {
        8, 7, 2, 16, 5, 14, 4, 12, 15, 13, 3, 18, 17, 0, 1, 6, 10, 9, 19, 11
    };

    private static int[] listed(int n) {
        return IntStream.range(0, n).toArray();
    }

    private static int search(FlowShop shop, long seed, long tries) {
        Genome start = new Genome(listed(shop.items()), new int[0]);
        Annealing.Found found = Annealing.search(shop, List.of(start), Effort.tries(seed, tries));
        assertThat(found.value()).isEqualTo(-shop.makespan(found.best().order()));
        return -(int) found.value();
    }

    @Test
    void taillardsFirstInstanceIsTheOneWhoseOptimumIsPublished() {
        assertThat(FlowShop.taillard(TA001, 20, 5).makespan(TA001_BEST)).isEqualTo(1278);
    }

    @Test
    void theSearchReachesThePublishedOptimumOfTaillardsFirstInstance() {
        FlowShop shop = FlowShop.taillard(TA001, 20, 5);
        int best = IntStream.rangeClosed(1, 3)
                .map(seed -> search(shop, seed, 60_000))
                .min()
                .orElseThrow();
        assertThat(best).isEqualTo(1278);
    }

    /** Johnson (1954): with two machines, short first times go first, short second times last. */
    @Test
    void twoMachinesEndAsJohnsonsRuleSays() {
        SplittableRandom random = new SplittableRandom(1954);
        for (int run = 0; run < 10; run++) {
            int[][] minutes = new int[2][12];
            for (int[] machine : minutes) {
                Arrays.setAll(machine, j -> random.nextInt(1, 60));
            }
            FlowShop shop = new FlowShop(minutes);
            assertThat(search(shop, run, 20_000)).isEqualTo(shop.makespan(johnson(minutes)));
        }
    }

    private static int[] johnson(int[][] minutes) {
        List<Integer> ahead = new ArrayList<>();
        List<Integer> behind = new ArrayList<>();
        for (int j = 0; j < minutes[0].length; j++) {
            (minutes[0][j] <= minutes[1][j] ? ahead : behind).add(j);
        }
        ahead.sort(Comparator.comparingInt(j -> minutes[0][j]));
        behind.sort(Comparator.comparingInt(j -> -minutes[1][j]));
        ahead.addAll(behind);
        return ahead.stream().mapToInt(j -> j).toArray();
    }

    @Test
    void publishedCertificatesHoldForTheEvaluator() throws IOException {
        Assumptions.assumeTrue(
                Files.exists(CERTIFICATES), "skipped: " + CERTIFICATES + " is not here");
        String[] row = Files.readAllLines(CERTIFICATES).stream()
                .filter(l -> l.startsWith("tfs001,"))
                .findFirst()
                .orElseThrow()
                .split(",");
        int[] order =
                Arrays.stream(row[6].split(" ")).mapToInt(Integer::parseInt).toArray();
        assertThat(FlowShop.taillard(TA001, 20, 5).makespan(order))
                .isEqualTo(Integer.parseInt(row[4]));
    }

    @Test
    void equalSeedsFindEqualOrders() {
        FlowShop shop = FlowShop.taillard(1, 20, 5);
        assertThat(search(shop, 7, 5_000)).isEqualTo(search(shop, 7, 5_000));
    }

    @Test
    void aSpentBudgetEndsTheSearchAtOnce() {
        FlowShop shop = FlowShop.taillard(1, 20, 5);
        Genome start = new Genome(listed(20), new int[0]);
        Annealing.Found found = Annealing.search(shop, List.of(start), Effort.until(1, () -> 1.0));
        assertThat(found.best().order()).isEqualTo(listed(20));
    }
}
