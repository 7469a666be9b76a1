package rainward.weather.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Vapour, pressure and wind of the FAO-56 worked examples. */
class AirPhysicsTest {

    @ParameterizedTest(name = "{3}")
    @CsvSource({
        "1800, 81.8, 0.054, 'FAO-56 example 2'",
        "1200, 87.9, 0.058, 'FAO-56 example 4, gamma from memory'",
        "1462.4, 85.17, 0.0566, 'ASCE-EWRI 2005 appendix C'"
    })
    void pressureAndPsychrometricConstant(double elevationM, double kpa, double gamma, String why) {
        double pressure = AirPhysics.pressureKpa(elevationM);
        assertThat(pressure).as(why).isCloseTo(kpa, within(0.05));
        assertThat(AirPhysics.psychrometricKpaPerC(pressure))
                .as(why)
                .isCloseTo(gamma, within(5e-4));
    }

    /** FAO-56 example 3. */
    @Test
    void saturationOfADayIsTheMeanOfBothEndsAndNotThatOfTheMean() {
        assertThat(AirPhysics.saturationKpa(24.5)).isCloseTo(3.075, within(5e-4));
        assertThat(AirPhysics.saturationKpa(15)).isCloseTo(1.705, within(5e-4));
        assertThat(AirPhysics.daySaturationKpa(15, 24.5)).isCloseTo(2.39, within(0.005));
        assertThat(AirPhysics.saturationKpa(19.75)).isCloseTo(2.30, within(0.005));
    }

    /** FAO-56 annex 2, 20 C. */
    @Test
    void slopeAt20C() {
        assertThat(AirPhysics.saturationSlopeKpaPerC(20)).isCloseTo(0.1447, within(5e-5));
    }

    /** FAO-56 example 4, 1200 m; printed value from memory. */
    @Test
    void vapourFromWetAndDryBulb() {
        double pressure = AirPhysics.pressureKpa(1200);
        assertThat(AirPhysics.fromBulbsKpa(25.6, 19.5, pressure)).isCloseTo(1.91, within(0.005));
    }

    /** FAO-56 example 5. */
    @Test
    void vapourFromTheRangeOfHumidity() {
        assertThat(AirPhysics.fromHumidityKpa(18, 25, 0.82, 0.54)).isCloseTo(1.70, within(0.005));
    }

    /** FAO-56 example 14: 3.2 m/s at 10 m. */
    @Test
    void windAtTwoMetres() {
        assertThat(AirPhysics.windAt2mMps(3.2, 10)).isCloseTo(2.4, within(0.05));
        assertThat(AirPhysics.windAt2mMps(1, 2)).isCloseTo(1, within(0.001));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-30, -5, 0, 12.5, 31})
    void dewPointTurnsSaturationRound(double tempC) {
        assertThat(AirPhysics.dewPointC(AirPhysics.saturationKpa(tempC)))
                .isCloseTo(tempC, within(1e-9));
    }
}
