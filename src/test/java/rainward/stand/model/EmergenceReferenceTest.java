package rainward.stand.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rainward.stand.Seedbeds.FIELD_CAPACITY_MPA;
import static rainward.stand.Seedbeds.alone;
import static rainward.stand.Seedbeds.steady;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import rainward.intake.TableFolder;
import rainward.intake.TableRow;
import rainward.stand.StandOutlook;

/** Days to emergence and shares that come up, against what others printed or counted. */
class EmergenceReferenceTest {

    /**
     * Printed days at printed temperatures: Harrington and Minges 1954 (from memory) and a
     * cover-crop table (confirmed at second hand); see shared/reference/emergence-days.csv.
     */
    @TestFactory
    Stream<DynamicTest> seedComesUpInThePrintedDays() {
        return TableFolder.at(Path.of("shared", "reference"))
                .rows("emergence-days.csv", List.of("source"))
                .stream()
                .map(row -> DynamicTest.dynamicTest(
                        row.text("species") + " at " + row.text("soil_temp_c"),
                        () -> comesUpInTime(row)));
    }

    private static void comesUpInTime(TableRow row) {
        double days = steady(960, FIELD_CAPACITY_MPA, row.number("soil_temp_c"))
                .depth(row.number("depth_cm"))
                .outlook(alone(row.text("species")), 1)
                .emergence()
                .get(0)
                .p50Days();
        assertThat(days).isCloseTo(row.number("days"), within(row.number("tolerance_days")));
    }

    /**
     * Turnip at 7.5 C in sandy loam: emergence the same from -10 to -100 kPa, fewer at -250, far
     * fewer and later towards -500; Rao and Dao 1987, Agronomy Journal 79:517-519.
     */
    @Test
    void dryingSoilHoldsTurnipsUpWhereRaoAndDaoFoundIt() {
        StandOutlook wet = turnipAt(-0.01);
        StandOutlook moist = turnipAt(-0.1);
        double wetDays = wet.emergence().get(0).p50Days();
        assertThat(moist.worth()[0]).isEqualTo(wet.worth()[0]);
        assertThat(moist.emergence().get(0).p50Days()).isCloseTo(wetDays, within(wetDays * 0.15));
        assertThat(turnipAt(-0.25).worth()[0]).isBetween(0.1, 0.9);
        assertThat(turnipAt(-0.5).worth()[0]).isLessThan(0.05);
    }

    private static StandOutlook turnipAt(double potentialMpa) {
        return steady(1200, potentialMpa, 7.5).outlook(alone("turnip"), 1);
    }

    /**
     * Canola at field capacity, 13 days after seeding: 76 % up in a clay, 50 % in a sandy loam;
     * Canola Council, canola encyclopedia. No temperature is printed; 15 C is taken here.
     */
    @Test
    void canolaAtFieldCapacityComesUpAsFarAsInTheFields() {
        assertThat(shareUp("rape", 15)).isBetween(0.50, 0.76);
    }

    /**
     * Wheat on five soils: half of it up within a week at 19.4 and 26.7 C, within two at 12.2 C, up
     * to six weeks at 5 C; De Jong and Best 1979, Canadian Journal of Soil Science 59:259-264. At 5
     * C the judging day is over before.
     */
    @Test
    void wheatComesUpInTheWeeksOfDeJongAndBest() {
        assertThat(wheatDays(26.7)).isBetween(2.0, 7.0);
        assertThat(wheatDays(19.4)).isBetween(3.0, 7.0);
        assertThat(wheatDays(12.2)).isBetween(7.0, 14.0);
        assertThat(wheatDays(5)).isGreaterThan(14);
    }

    private static double wheatDays(double tempC) {
        return steady(960, FIELD_CAPACITY_MPA, tempC)
                .depth(3)
                .outlook(alone("winter wheat"), 1)
                .emergence()
                .get(0)
                .p50Days();
    }

    /**
     * Annual clovers came up after 89 to 96 C d above 0 C below 12 C, some sooner above (Nori 2013,
     * abstract of the thesis). Ours come from memory and are slower; this holds how much.
     */
    @Test
    void crimsonCloverComesUpNoMoreThanTwoThirdsLaterThanOtherAnnualClovers() {
        double days = steady(960, FIELD_CAPACITY_MPA, 12)
                .depth(1)
                .outlook(alone("crimson clover"), 1)
                .emergence()
                .get(0)
                .p50Days();
        assertThat(days).isBetween(89 / 12.0, 96 / 12.0 * 5 / 3);
    }

    /** The greatest target that is still reached is the share of live seed that came up. */
    private static double shareUp(String species, double tempC) {
        var mix = alone(species);
        double share = 0;
        for (double target = 0.01; target < 1; target += 0.01) {
            var asking =
                    new rainward.farm.Mix(mix.name(), mix.components(), 1.3, target, mix.season());
            StandOutlook outlook = steady(312, FIELD_CAPACITY_MPA, tempC).outlook(asking, 1);
            share = outlook.chance()[0] == 1 ? target : share;
        }
        return share;
    }
}
