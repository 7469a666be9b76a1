package rainward.input.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.farm.UnitSystem;
import rainward.input.Gap;
import rainward.input.Us;
import rainward.input.load.LoadSheet.MachineSheet;
import rainward.input.load.LoadSheet.Total;
import rainward.input.seed.BulkDensity;
import rainward.input.seed.Fill;
import rainward.input.stock.Demands;
import rainward.input.stock.Stock;

/** What goes on the trucks on the invented crew's Tuesday. */
class LoadSheetTest {
    static final LoadSheet TUESDAY = LoadSheet.of(Demo.TUESDAY, Demo.plan(), Demo.supplies());

    private static MachineSheet machine(LoadSheet sheet, String name) {
        return sheet.machines().stream()
                .filter(m -> m.machine().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static double pounds(LoadSheet sheet, String what) {
        return sheet.totals().stream()
                .filter(total -> total.what().equals(what))
                .mapToDouble(total -> Us.lb(total.needKg()))
                .sum();
    }

    @Nested
    class Order {

        @Test
        void machinesAndFieldsComeInTheOrderOfTheWork() {
            assertThat(TUESDAY.machines())
                    .extracting(MachineSheet::machine)
                    .containsExactly("spreader", "roller seeder");
            assertThat(machine(TUESDAY, "roller seeder").lines())
                    .extracting(line -> line.item().place().field())
                    .containsExactly("Mill 1", "Mill 2");
        }

        /** 23:30 in Michigan is Wednesday in UTC; 00:30 on Wednesday is not Tuesday's work. */
        @Test
        void theDayIsThatOfTheFarm() {
            LoadSheet wednesday =
                    LoadSheet.of(Demo.TUESDAY.plusDays(1), Demo.plan(), Demo.supplies());

            assertThat(wednesday.machines())
                    .singleElement()
                    .satisfies(m -> assertThat(m.lines())
                            .singleElement()
                            .satisfies(line ->
                                    assertThat(line.item().place().field()).isEqualTo("Mill 3")));
        }
    }

    @Nested
    class Amounts {

        /** 10 acres at 2 lb turnip of 90 % and 4 lb rape of 80 % live seed, worked by hand. */
        @Test
        void seedIsAddedUpOverTheFields() {
            assertThat(pounds(TUESDAY, "turnip")).isCloseTo(20 / 0.9, within(1e-6));
            assertThat(pounds(TUESDAY, "rape")).isCloseTo(40 / 0.8, within(1e-6));
        }

        @Test
        void limeIsSpreadInWholeLoads() {
            assertThat(pounds(TUESDAY, "ag lime")).isCloseTo(16_000, within(1e-6));
            assertThat(machine(TUESDAY, "spreader").lines().get(0).loads()).isEqualTo(3);
        }

        @Test
        void bagsHoldTheNeedAndTheSpareAndTheShortageIsSaid() {
            Total rape = TUESDAY.totals().stream()
                    .filter(total -> total.what().equals("rape"))
                    .findFirst()
                    .orElseThrow();

            // A heel of 2.304 kg on 32.76 kg sown is more than one part in twenty.
            double heelShare = Us.lb(2.304) / (20 / 0.9 + 40 / 0.8);
            assertThat(Us.lb(rape.spareKg())).isCloseTo(50 * heelShare, within(1e-6));
            assertThat(rape.pull().orElseThrow().wholeBags()).isEqualTo(1);
            assertThat(Us.lb(rape.pull().orElseThrow().shortKg()))
                    .isCloseTo(25 + 50 * heelShare, within(1e-6));
        }

        @Test
        void limeIsLoadedToTheWeightAndSeedNeverShortOfWhatTheBoxesTake() {
            assertThat(TUESDAY.totals())
                    .filteredOn(total -> total.what().equals("ag lime"))
                    .extracting(Total::spareKg)
                    .containsExactly(0.0);
            double seedKg = TUESDAY.totals().stream()
                    .filter(total -> total.pull().isPresent())
                    .mapToDouble(total -> total.needKg() + total.spareKg())
                    .sum();
            double filledKg = machine(TUESDAY, "roller seeder").fills().stream()
                    .mapToDouble(Fill::addKg)
                    .sum();
            assertThat(seedKg).isGreaterThan(filledKg - 1e-6);
        }

        /** Boxes of two times 18 L hold 23.04 kg, 2.304 kg of it as heel. */
        @Test
        void fillsFallAlongTheRouteAndBringWhatIsSown() {
            List<Fill> fills = machine(TUESDAY, "roller seeder").fills();
            double broughtKg = fills.stream().mapToDouble(Fill::addKg).sum();

            assertThat(Us.lb(broughtKg - 2.304)).isCloseTo(20 / 0.9 + 40 / 0.8, within(1e-6));
            assertThat(fills).extracting(Fill::field).containsExactly("Mill 1", "Mill 2");
        }

        /** 7.22 lb/ac out of the bag against 6 lb/ac at setting 18 last year. */
        @Test
        void theSettingStartsFromLastYearsOfTheSameMix() {
            double setting = machine(TUESDAY, "roller seeder")
                    .lines()
                    .get(0)
                    .setting()
                    .orElseThrow()
                    .settingIndex();

            assertThat(setting).isCloseTo(18 * (2 / 0.9 + 4 / 0.8) / 6, within(1e-6));
        }
    }

    @Nested
    class Gaps {

        @Test
        void aFieldWithoutSoilTestIsNotGivenLimeByGuess() {
            assertThat(TUESDAY.gaps())
                    .extracting(Gap::text)
                    .anySatisfy(text ->
                            assertThat(text).contains("Mill 2").contains("enter its soil test"));
            assertThat(machine(TUESDAY, "spreader").lines().get(1).amounts()).isEmpty();
        }

        @Test
        void anUnreadTagGivesNoWeightNoFillAndNoSetting() {
            LoadSheet wednesday =
                    LoadSheet.of(Demo.TUESDAY.plusDays(1), Demo.plan(), Demo.supplies());

            assertThat(wednesday.totals()).isEmpty();
            assertThat(wednesday.machines().get(0).fills()).isEmpty();
            assertThat(wednesday.machines().get(0).lines().get(0).setting()).isEmpty();
            assertThat(wednesday.gaps())
                    .singleElement()
                    .satisfies(gap -> assertThat(gap.text()).contains("oats").contains("tag"));
        }

        @Test
        void unknownGearFieldsAndMixesAreEachNamedOnce() {
            Supplies bare = new Supplies(
                    Demo.roster(),
                    Map.of("Mill 1", Demo.field("Mill 1", 4)),
                    Demo.supplies().seed(),
                    Demo.supplies().spreads(),
                    new Supplies.Gear(Map.of(), Map.of(), new BulkDensity(Map.of()), List.of()));

            assertThat(LoadSheet.of(Demo.TUESDAY, Demo.plan(), bare).gaps())
                    .extracting(gap -> gap.about() + ": " + gap.missing())
                    .containsExactlyInAnyOrder(
                            "spreader: size of its load is not known",
                            "Mill 2: field is not known",
                            "turnip and rape: weight by volume is not known, so fills are not",
                            "roller seeder: no setting on record for turnip and rape or any"
                                    + " other mix");
        }
    }

    @Nested
    class Units {

        /** The amounts are the same whichever units the sheet is written in. */
        @Test
        void bothUnitSystemsWriteTheSameAmounts() {
            double tonnes = Us.kg(16_000) / 1_000;

            assertThat(LoadText.of(TUESDAY, UnitSystem.US_CUSTOMARY, Demo.ZONE))
                    .contains("ag lime 8 tons (4000 lb/ac)");
            assertThat(LoadText.of(TUESDAY, UnitSystem.METRIC, Demo.ZONE))
                    .contains("ag lime " + Math.round(10 * tonnes) / 10.0 + " t (");
        }
    }

    @Nested
    class Ahead {

        @Test
        void theDaysOfThePlanAddUpToDemands() {
            assertThat(Demands.of(Demo.plan(), Demo.supplies()))
                    .allSatisfy(demand -> assertThat(demand.day()).isEqualTo(Demo.TUESDAY))
                    .extracting(Stock.Demand::item)
                    .containsExactly("ag lime", "rape", "turnip");
        }

        @Test
        void aDayWithoutWorkIsAnEmptySheet() {
            LoadSheet none = LoadSheet.of(Demo.TUESDAY.plusDays(9), Demo.plan(), Demo.supplies());

            assertThat(none.machines()).isEmpty();
            assertThat(none.totals()).isEmpty();
            assertThat(LoadText.of(none, UnitSystem.METRIC, Demo.ZONE)).contains("No work");
        }
    }
}
