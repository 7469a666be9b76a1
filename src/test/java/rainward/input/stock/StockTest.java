package rainward.input.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.farm.DayClock;
import rainward.farm.Mix;
import rainward.farm.SeedingMethod;
import rainward.farm.UnitSystem;
import rainward.input.Mixes;
import rainward.input.seed.SeedLot;
import rainward.input.seed.SeedTag;
import rainward.input.stock.Stock.Demand;
import rainward.input.stock.Stock.Shortage;
import rainward.input.stock.StockEntry.Kind;

/** The book of the shed, and when it runs out. */
class StockTest {
    static final LocalDate DAY = LocalDate.of(2026, 7, 14);
    static final DayClock CLOCK =
            new DayClock(ZoneId.of("America/Detroit"), UnitSystem.US_CUSTOMARY);

    private static StockEntry entry(int hour, Kind kind, double massKg) {
        return new StockEntry(
                "oats",
                Instant.parse("2026-07-14T00:00:00Z").plusSeconds(3_600L * hour),
                kind,
                massKg);
    }

    @Nested
    class Book {

        @Test
        void deliveriesAndUsesAddUpInOrderOfTime() {
            Stock stock = Stock.of(List.of(
                    entry(3, Kind.USED, 40),
                    entry(1, Kind.RECEIVED, 100),
                    entry(5, Kind.USED, 10)));

            assertThat(stock.of("oats")).isCloseTo(50, within(1e-9));
            assertThat(stock.gaps()).isEmpty();
            assertThat(stock.of("rye")).isZero();
        }

        @Test
        void aCountIsBelievedFromThenOn() {
            Stock stock = Stock.of(List.of(
                    entry(1, Kind.RECEIVED, 100),
                    entry(2, Kind.COUNTED, 70),
                    entry(3, Kind.USED, 20)));

            assertThat(stock.of("oats")).isCloseTo(50, within(1e-9));
        }

        @Test
        void moreUsedThanThereWasAsksForACountAndACountSettlesIt() {
            List<StockEntry> book =
                    new ArrayList<>(List.of(entry(1, Kind.RECEIVED, 10), entry(2, Kind.USED, 15)));

            assertThat(Stock.of(book).of("oats")).isZero();
            assertThat(Stock.of(book).gaps())
                    .singleElement()
                    .satisfies(gap -> assertThat(gap.text()).contains("oats").contains("weigh"));
            book.add(entry(3, Kind.COUNTED, 5));
            assertThat(Stock.of(book).gaps()).isEmpty();
        }
    }

    @Nested
    class Ahead {
        private final Stock hundred = Stock.of(List.of(entry(0, Kind.RECEIVED, 100)));

        @Test
        void theDayThatIsNotServedIsNamedAndTheOrderGoesOutBefore() {
            List<Shortage> shortages = hundred.shortages(
                    List.of(
                            new Demand("oats", DAY.plusDays(4), 50),
                            new Demand("oats", DAY, 60),
                            new Demand("oats", DAY.plusDays(2), 30)),
                    3);

            assertThat(shortages)
                    .containsExactly(new Shortage("oats", DAY.plusDays(4), 40, DAY.plusDays(1)));
            assertThat(shortages.get(0).text("88 lb", DAY, CLOCK)).contains("order by Wed, Jul 15");
            assertThat(shortages.get(0).text("88 lb", DAY.plusDays(2), CLOCK)).contains("too late");
        }

        @Test
        void whatReachesIsNotMentioned() {
            assertThat(hundred.shortages(List.of(new Demand("oats", DAY, 100)), 3))
                    .isEmpty();
        }

        @Test
        void theEarliestShortageComesFirst() {
            assertThat(hundred.shortages(
                            List.of(
                                    new Demand("oats", DAY.plusDays(3), 101),
                                    new Demand("rye", DAY.plusDays(1), 1)),
                            0))
                    .extracting(Shortage::item)
                    .containsExactly("rye", "oats");
        }
    }

    @Nested
    class Hectares {
        private final Mix mix =
                Mixes.mix("two", Mixes.part("oats", 35_000, 40), Mixes.part("pea", 4_000, 20));

        private SeedLot lot(String species, int bags, Optional<SeedTag> tag) {
            return new SeedLot(species, tag, 25, bags, 0);
        }

        @Test
        void theScarcerComponentSetsHowFarAMixGoes() {
            Optional<SeedTag> half = Optional.of(SeedTag.bare("L", 1, 0.5));

            assertThat(Demands.areaHa(
                                    mix,
                                    SeedingMethod.DRILLED,
                                    List.of(lot("oats", 16, half), lot("pea", 4, half)))
                            .orElseThrow())
                    .isCloseTo(2.5, within(1e-9));
        }

        @Test
        void aComponentThatIsNotInTheShedMeansNoHectare() {
            assertThat(Demands.areaHa(
                            mix,
                            SeedingMethod.DRILLED,
                            List.of(lot("oats", 16, Optional.of(SeedTag.bare("L", 1, 1))))))
                    .hasValue(0);
        }

        @Test
        void anUnreadTagLeavesItOpen() {
            assertThat(Demands.areaHa(
                            mix, SeedingMethod.DRILLED, List.of(lot("oats", 16, Optional.empty()))))
                    .isEmpty();
        }
    }

    @Nested
    class Laws {

        @Test
        void theBookNeverGoesBelowZero() {
            var luck = new SplittableRandom(20260719);
            for (int run = 0; run < 300; run++) {
                List<StockEntry> book = new ArrayList<>();
                for (int i = 0; i < 30; i++) {
                    book.add(entry(
                            luck.nextInt(500),
                            Kind.values()[luck.nextInt(3)],
                            luck.nextDouble(50)));
                }
                assertThat(Stock.of(book).of("oats")).isNotNegative().isFinite();
            }
        }
    }
}
