package rainward.input.seed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Bags for the truck: opened ones first. */
class SeedLotTest {

    private static SeedLot lot(int wholeBags, double openedKg) {
        return new SeedLot("oats", Optional.empty(), 25, wholeBags, openedKg);
    }

    @Test
    void theOpenedBagGoesFirstAndOnlyThenAWholeOne() {
        assertThat(lot(4, 10).pull(8)).isEqualTo(new SeedLot.Pull(0, 8, 0, 0));
        assertThat(lot(4, 10).pull(36)).isEqualTo(new SeedLot.Pull(2, 10, 24, 0));
    }

    @Test
    void aFullBagIsNotOpenedForTheRoundingOfASum() {
        assertThat(lot(4, 0).pull(0.1 * 3 * 250).wholeBags()).isEqualTo(3);
    }

    @Test
    void whatTheShedDoesNotHaveIsSaid() {
        assertThat(lot(1, 5).pull(42)).isEqualTo(new SeedLot.Pull(1, 5, 0, 12));
    }

    @Test
    void nothingIsLostBetweenShedAndBox() {
        var luck = new SplittableRandom(20260707);
        for (int i = 0; i < 2_000; i++) {
            SeedLot lot = lot(luck.nextInt(12), luck.nextDouble(40));
            double wantedKg = luck.nextDouble(300);

            SeedLot.Pull pull = lot.pull(wantedKg);

            double loadedKg = pull.wholeBags() * 25 + pull.openedKg();
            assertThat(loadedKg - pull.comesBackKg() + pull.shortKg())
                    .isCloseTo(wantedKg, within(1e-6));
            assertThat(loadedKg).isLessThanOrEqualTo(lot.onHandKg() + 1e-9);
            assertThat(pull.comesBackKg()).isBetween(0.0, 25.0);
            assertThat(pull.shortKg()).isGreaterThanOrEqualTo(0);
        }
    }
}
