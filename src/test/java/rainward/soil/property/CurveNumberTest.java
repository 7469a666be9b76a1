package rainward.soil.property;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.soil.ReferenceRows;

/** Curve numbers of TR-55. */
class CurveNumberTest {

    private static final ReferenceRows TABLE = ReferenceRows.of("curve_number_runoff.csv");

    static IntStream rains() {
        return TABLE.indices();
    }

    @ParameterizedTest
    @MethodSource("rains")
    void runoffFollowsTheTable(int row) {
        for (String column : TABLE.columns()) {
            if (column.startsWith("runoff_in_cn")) {
                CurveNumber number = new CurveNumber(Double.parseDouble(column.substring(12)));
                double runoffIn = number.runoffMm(25.4 * TABLE.number(row, "rain_in")) / 25.4;
                assertThat(runoffIn).as(column).isCloseTo(TABLE.number(row, column), within(6e-4));
            }
        }
    }

    /** TR-55 example 2-1: 30 % group B and 70 % group C under good pasture, 6 inches of rain. */
    @Test
    void theExampleOfTheHandbook() {
        double weighted = Math.rint(0.3 * 61 + 0.7 * 74);
        assertThat(weighted).isEqualTo(70);
        assertThat(new CurveNumber(weighted).runoffMm(6 * 25.4) / 25.4)
                .isCloseTo(2.81, within(0.005));
    }

    /** Beven's table B6.3.2 after USDA-SCS 1985; the algebraic forms come within 2 of it. */
    @ParameterizedTest
    @CsvSource({"90, 78, 96", "80, 63, 91", "70, 51, 85", "60, 40, 78"})
    void wetnessBeforeTheStormMovesTheNumber(double average, double dry, double wet) {
        CurveNumber number = new CurveNumber(average);
        assertThat(number.afterDrySpell().curveNumber()).isCloseTo(dry, within(2.0));
        assertThat(number.afterWetDays().curveNumber()).isCloseTo(wet, within(2.0));
    }
}
