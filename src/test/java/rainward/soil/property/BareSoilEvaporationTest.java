package rainward.soil.property;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.soil.FieldSoil;
import rainward.soil.Skies;
import rainward.soil.Soils;
import rainward.soil.column.ColumnStep;
import rainward.soil.column.SoilColumn;
import rainward.weather.past.ObservedWeather;

/** FAO-56 chapter 7: bare soil drying, and the column beside it. */
class BareSoilEvaporationTest {

    private static final BareSoilEvaporation SANDY_LOAM = new BareSoilEvaporation(18, 8);
    private static final double[] REFERENCE_MM = {5, 5.5, 5, 4.8, 5.2, 4.5, 5};

    /** A public benchmark that cites FAO-56 gives Kr, the rest is computed. */
    @Test
    void sevenDaysAfterASoaking() {
        double[] evaporated = {5.250, 5.775, 3.662, 1.670, 0.897, 0.352, 0.207};
        double depletion = 0;
        for (int day = 0; day < 7; day++) {
            double e = SANDY_LOAM.dayMm(depletion, REFERENCE_MM[day], 1.2 - 0.15);
            assertThat(e).as("day %d", day + 1).isCloseTo(evaporated[day], within(1e-3));
            depletion += e;
        }
        assertThat(depletion).isCloseTo(17.813, within(2e-3));
    }

    @ParameterizedTest
    @CsvSource({"0.23, 0.10, 18.0", "0.30, 0.15, 22.5", "0.42, 0.25, 29.5"})
    void evaporableWaterOfTheTop(double capacity, double wilting, double totalMm) {
        assertThat(BareSoilEvaporation.totalMm(capacity, wilting, 100))
                .isCloseTo(totalMm, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"9, 1", "15.75, 0.5", "21.15, 0.1", "22.5, 0"})
    void theRateFallsInAStraightLine(double depletionMm, double factor) {
        BareSoilEvaporation top = new BareSoilEvaporation(22.5, 9);
        assertThat(top.reductionFactor(depletionMm)).isCloseTo(factor, within(1e-9));
    }

    /**
     * The column's soil delivers by its own conductivity: over a week after a soaking it comes
     * within a third of the FAO-56 top of 10 cm, and like it slows after the first days.
     */
    @Test
    void theColumnDriesLikeTheHandbook() {
        FieldSoil soil = Soils.bare(Soils.SANDY_LOAM);
        SaxtonRawls water = SaxtonRawls.of(Soils.SANDY_LOAM);
        BareSoilEvaporation book = new BareSoilEvaporation(
                BareSoilEvaporation.totalMm(
                        water.fieldCapacityFraction(), water.wiltingPointFraction(), 100),
                8);
        ObservedWeather dry = Skies.past(7, -1, 0);
        ColumnStep column =
                new ColumnStep(soil, new SoilColumn(soil).unknown(dry.air().start(), 23), 1);
        double depletion = 0;
        double columnMm = 0;
        double[] byDay = new double[7];
        for (int h = 0; h < 168; h++) {
            column.observed(dry, h);
            byDay[h / 24] += column.water.soilEvaporationMm[0];
            columnMm += column.water.soilEvaporationMm[0];
        }
        for (int day = 0; day < 7; day++) {
            depletion += book.dayMm(depletion, 5, 1.2);
        }
        assertThat(columnMm).isCloseTo(depletion, within(depletion / 3));
        assertThat(byDay[6]).isLessThan(byDay[0] / 2);
    }
}
