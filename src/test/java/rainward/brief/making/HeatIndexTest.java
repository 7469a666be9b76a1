package rainward.brief.making;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** How hot it feels, against values of the published equation and of the printed chart. */
class HeatIndexTest {

    /** Rows name their source and how sure they are. */
    @ParameterizedTest(name = "{0} F at {1} % feels like {2} F: {5}")
    @CsvFileSource(files = "shared/reference/heat_index.csv", numLinesToSkip = 2)
    void agreesWithTheNationalWeatherService(
            double airTempF,
            double humidityPct,
            double expectedF,
            double toleranceF,
            String source,
            String basis) {
        assertThat(HeatIndex.fahrenheit(airTempF, humidityPct))
                .as("%s, %s", source, basis)
                .isCloseTo(expectedF, within(toleranceF));
    }

    /**
     * 33.9 C with a dew point of 24 C is 93 F at 56.4 %; FAO56 eq. 11 gives the vapour pressures.
     */
    @Test
    void dewPointIsTurnedIntoHumidity() {
        double humidityPct = 100 * 2.984 / 5.291;

        assertThat(HeatIndex.fromDewPointC(33.9, 24) * 1.8 + 32)
                .isCloseTo(HeatIndex.fahrenheit(33.9 * 1.8 + 32, humidityPct), within(0.1));
    }

    @Test
    void moreMoistureNeverFeelsCoolerInTheHeat() {
        var sky = new SplittableRandom(20260716);
        for (int i = 0; i < 1_000; i++) {
            double airTempC = sky.nextDouble(27, 43);
            double dewPointC = sky.nextDouble(12, airTempC - 4);

            assertThat(HeatIndex.fromDewPointC(airTempC, dewPointC + 1))
                    .as("%.2f C over dew point %.2f C", airTempC, dewPointC)
                    .isGreaterThanOrEqualTo(HeatIndex.fromDewPointC(airTempC, dewPointC) - 0.3);
        }
    }

    /** OSHA, "Using the Heat Index": 91, 103 and 115 F. */
    @ParameterizedTest
    @CsvSource({
        "90.9, LOWER",
        "91.1, MODERATE",
        "102.9, MODERATE",
        "103.1, HIGH",
        "114.9, HIGH",
        "115.1, VERY_HIGH"
    })
    void stepOfCareIs(double heatIndexF, HeatIndex.Care care) {
        assertThat(HeatIndex.Care.of((heatIndexF - 32) / 1.8)).isEqualTo(care);
    }
}
