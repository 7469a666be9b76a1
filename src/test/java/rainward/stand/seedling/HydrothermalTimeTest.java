package rainward.stand.seedling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.farm.Species;
import rainward.intake.Shipped;
import rainward.intake.TableFolder;
import rainward.intake.TableRow;

class HydrothermalTimeTest {
    private static final TableFolder REFERENCE = TableFolder.at(Path.of("shared", "reference"));

    /**
     * Oilseed rape, 14 potentials, 150 seeds each, counted on six days: Pace, Benincasa, Ghanem,
     * Quinet and Lutts 2012, Experimental Agriculture 48:238-251; 20 C from memory.
     */
    @Nested
    class RapeInTheDish {
        private static final double TEMP_C = 20;
        private static final double SEEDS = 150;
        private final Species rape = Shipped.species("rape");
        private final HydrothermalTime model = new HydrothermalTime(rape);

        /** The fit was made outside the program on the same counts: -log L 1186.578. */
        @Test
        void theCountsAreAsLikelyAsUnderThePublishedFit() {
            double minusLogLikelihood = 0;
            for (TableRow row : counts()) {
                double share = cumulative(row, "to_day") - cumulative(row, "from_day");
                minusLogLikelihood -= row.number("seeds_germinated") * Math.log(share);
            }
            assertThat(minusLogLikelihood).isCloseTo(1186.578, within(1.0));
        }

        /** Share of all seed up to each day of counting. */
        @Test
        void theCourseFollowsTheCounts() {
            double squares = 0;
            int count = 0;
            double seen = 0;
            for (TableRow row : counts()) {
                seen = row.number("from_day") == 0 ? 0 : seen;
                seen += row.number("seeds_germinated") / SEEDS;
                if (!row.text("to_day").equals("never")) {
                    double off = seen - cumulative(row, "to_day");
                    squares += off * off;
                    count++;
                }
            }
            assertThat(Math.sqrt(squares / count)).isLessThan(0.06);
        }

        /** Times and shares computed outside the program from the fit. */
        @ParameterizedTest(name = "{0} MPa: half after {1} d, {2} after three days")
        @CsvSource({"-0.03, 0.836, 1.000", "-0.3, 1.183, 1.000", "-0.6, 2.197, 0.790"})
        void halfIsUpWhenTheFitSays(double mpa, double halfDays, double afterThreeDays) {
            assertThat(model.germinatedFraction(mpa, TEMP_C, halfDays))
                    .isCloseTo(0.5, within(0.01));
            assertThat(model.germinatedFraction(mpa, TEMP_C, 3))
                    .isCloseTo(afterThreeDays, within(0.01));
        }

        @Test
        void seedDrierThanAllBasePotentialsNeverStarts() {
            assertThat(model.germinatedFraction(-1.5, TEMP_C, 1000)).isLessThan(1e-5);
        }

        private List<TableRow> counts() {
            return REFERENCE.rows("rape-germination.csv", List.of("source"));
        }

        private double cumulative(TableRow row, String column) {
            if (row.text(column).equals("never")) {
                return 1;
            }
            return rape.germinableFraction()
                    * model.germinatedFraction(
                            row.number("water_potential_mpa"), TEMP_C, row.number(column));
        }
    }

    /** Worked in a textbook after Harrington 1962: 80 C d above 2.5 C. */
    @ParameterizedTest
    @CsvSource({"22.5, 4", "7.5, 16"})
    void onionTakesTheThermalTimeOfTheTextbook(double tempC, double days) {
        Species onion = new Species(
                "onion",
                new Species.Cardinal(2.5, 25, 35, 50),
                80,
                -1,
                0.2,
                0.95,
                new Species.SeedlingGrowth(20, 10, 4),
                300_000);
        HydrothermalTime model = new HydrothermalTime(onion);
        assertThat(model.germinatedFraction(0, tempC, days)).isCloseTo(0.5, within(1e-6));
    }

    /**
     * Eleven Brassica crops: more than 85 % at 15, 25 and 35 C, slowest at 5 C, poor at 45 C in
     * some; Tokumasu, Kanada and Kato 1985. They found 35 C the fastest, which the optimum of 27 C
     * of Suanda's lines does not give: the two sources disagree.
     */
    @ParameterizedTest
    @ValueSource(strings = {"rape", "turnip", "kale"})
    void brassicaStartsOverTheRangeThatTokumasuFound(String name) {
        Species species = Shipped.species(name);
        HydrothermalTime model = new HydrothermalTime(species);
        for (double tempC : new double[] {15, 25, 35}) {
            double final14 = species.germinableFraction() * model.germinatedFraction(0, tempC, 14);
            assertThat(final14).as("%s C", tempC).isGreaterThan(0.85);
            assertThat(model.germinatedFraction(0, tempC, 2))
                    .isGreaterThan(model.germinatedFraction(0, 5, 2));
        }
        assertThat(model.germinatedFraction(0, 45, 14)).isLessThan(0.5);
    }

    /**
     * Half of field pea germinated after 46.6 C d (winter lines) to 55.9 C d (spring lines) above
     * -0.98 C, at up to 27.5 C, where all cardinal temperatures differ from those of our table;
     * abstract of a controlled study of 2025, PubMed 40596089.
     */
    @ParameterizedTest
    @ValueSource(doubles = {10, 15, 20, 24})
    void fieldPeaGerminatesBetweenWinterAndSpringLines(double tempC) {
        HydrothermalTime pea = new HydrothermalTime(Shipped.species("field pea"));
        double winterDays = 46.6 / (tempC + 0.98);
        double springDays = 55.9 / (tempC + 0.98);
        assertThat(medianDays(pea, tempC)).isBetween(0.9 * winterDays, 1.1 * springDays);
    }

    /**
     * Half of five annual clovers germinated after 25 to 34 C d above 0 C; theses of Nori 2013 and
     * Monks 2009, abstracts. No red or white clover is among them, so ours, which come from memory,
     * are held to within a day only.
     */
    @ParameterizedTest
    @ValueSource(strings = {"crimson clover", "red clover", "white clover"})
    void cloverGerminatesWithinADayOfOtherClovers(String name) {
        HydrothermalTime clover = new HydrothermalTime(Shipped.species(name));
        for (double tempC : new double[] {10, 15, 20}) {
            assertThat(medianDays(clover, tempC))
                    .as("%s C", tempC)
                    .isBetween(25 / tempC - 1, 34 / tempC + 1);
        }
    }

    /**
     * Turnip stands with 5, 3, 2, 1 and 1 days from 10 to 30 C in Harrington and Minges 1954, whole
     * days of a copy of the table. No shoot rises from half an inch so fast, so some stage after
     * the root shows was counted: ours, the hydrotime of rape on the temperatures of <i>B.
     * rapa</i>, must be past half by then, and no more than three times as fast; from 10 to 20 C it
     * must quicken as much, by 2.5, which half a day of rounding leaves between 1.8 and 3.7.
     */
    @ParameterizedTest
    @CsvSource({"10, 5", "15, 3", "20, 2", "25, 1", "30, 1"})
    void halfOfTheTurnipsHaveGerminatedByThePrintedDay(double tempC, double days) {
        HydrothermalTime turnip = new HydrothermalTime(Shipped.species("turnip"));
        assertThat(medianDays(turnip, tempC)).isBetween(days / 3, days + 0.5);
        assertThat(medianDays(turnip, 10) / medianDays(turnip, 20)).isBetween(1.8, 3.7);
    }

    private static double medianDays(HydrothermalTime model, double tempC) {
        double days = 0;
        while (model.germinatedFraction(0, tempC, days) < 0.5) {
            days += 0.01;
        }
        return days;
    }

    /** Median days of barley, counted once a day: data set barley of drcSeedGerm. */
    @Test
    void barleyGerminatesWithinTwoDaysOfTheCount() {
        HydrothermalTime model = new HydrothermalTime(Shipped.species("barley"));
        for (TableRow row : REFERENCE.rows("barley-germination.csv", List.of("source"))) {
            if (!row.text("median_day").equals("-")) {
                double day = row.number("median_day");
                double tempC = row.number("temp_c");
                assertThat(model.germinatedFraction(0, tempC, day + 2))
                        .as("%s C", tempC)
                        .isGreaterThan(0.5);
                assertThat(model.germinatedFraction(0, tempC, day - 2)).isLessThan(0.5);
            }
        }
    }

    @Nested
    class Laws {
        @Test
        void classesStandForEqualSharesOfTheLot() {
            double[] classes = new HydrothermalTime(Shipped.species("rape")).basePotentialsMpa(200);
            double mean = 0;
            double square = 0;
            for (double mpa : classes) {
                mean += mpa / 200;
                square += (mpa + 0.95) * (mpa + 0.95) / 200;
            }
            assertThat(mean).isCloseTo(-0.95, within(1e-9));
            assertThat(Math.sqrt(square)).isCloseTo(0.116, within(0.002));
            assertThat(classes).isSorted();
        }

        @Test
        void warmerThanBestNeverGerminatesMore() {
            HydrothermalTime model = new HydrothermalTime(Shipped.species("turnip"));
            double before = 1;
            for (double tempC = 27.2; tempC < 50; tempC += 0.5) {
                double now = model.germinatedFraction(-0.1, tempC, 3);
                assertThat(now).isLessThanOrEqualTo(before);
                before = now;
            }
        }

        @Test
        void belowBaseNothingHappens() {
            HydrothermalTime model = new HydrothermalTime(Shipped.species("soybean"));
            assertThat(model.germinatedFraction(0, 9.9, 1000)).isZero();
        }
    }
}
