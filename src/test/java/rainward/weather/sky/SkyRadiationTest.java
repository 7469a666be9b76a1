package rainward.weather.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.weather.trace.Skies;

/** Radiation through cloud, and the demand that follows from it. */
class SkyRadiationTest {

    /** Kasten and Czeplak 1980: {@code 1 - 0.75 (N/8)^3.4}, reckoned by hand. */
    @ParameterizedTest(name = "{0} eighths")
    @CsvSource({"0, 1", "4, 0.9290", "6, 0.7180", "8, 0.25"})
    void cloudLetsThroughThePublishedShare(double eighths, double share) {
        assertThat(SkyRadiation.throughCloudFraction(eighths / 8)).isCloseTo(share, within(5e-4));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.1, 0.5, 0.93, 1})
    void skyCoverTurnsItRound(double cover) {
        assertThat(SkyRadiation.skyCoverFraction(SkyRadiation.throughCloudFraction(cover)))
                .isCloseTo(cover, within(1e-9));
    }

    @Test
    void moreThanAClearSkyIsClearAndLessThanOvercastIsOvercast() {
        assertThat(SkyRadiation.skyCoverFraction(1.3)).isZero();
        assertThat(SkyRadiation.skyCoverFraction(0.1)).isEqualTo(1);
    }

    /**
     * Kimura and Stephenson 1969 (ASHRAE Trans. 75(1), solar radiation on cloudy days): {@code P +
     * Q C + R C^2} of the clear sun under C tenths of cloud, fitted to measured sun and the hourly
     * cloud of observers at Ottawa; the summer's coefficients from memory.
     */
    static double ottawaSummer(double cover) {
        double tenths = 10 * cover;
        return 0.96 + 0.033 * tenths - 0.0106 * tenths * tenths;
    }

    /**
     * Two fits to measured sun, Hamburg's that is used here and Ottawa's, show what is not known
     * between clear and grey: up to a ninth of the clear sun, and Hamburg's lets more through.
     */
    @Test
    void betweenClearAndGreyTwoMeasuredFitsDifferByANinthOfTheClearSun() {
        double widest = 0;
        double sum = 0;
        for (int tenth = 0; tenth <= 10; tenth++) {
            double cover = tenth / 10.0;
            double apart = SkyRadiation.throughCloudFraction(cover) - ottawaSummer(cover);
            double likeOttawa = SkyRadiation.skyCoverFraction(ottawaSummer(cover));
            System.out.println(String.format(
                    Locale.ROOT,
                    "%d/10 cloud: Hamburg %.3f, Ottawa %.3f, July demand %.2f and %.2f mm",
                    tenth,
                    SkyRadiation.throughCloudFraction(cover),
                    ottawaSummer(cover),
                    dayMm(cover, 2.5, 14),
                    dayMm(likeOttawa, 2.5, 14)));
            assertThat(apart).isBetween(0.0, 0.11);
            widest = Math.max(widest, apart);
            sum += apart;
        }
        assertThat(widest).isCloseTo(0.105, within(0.005));
        assertThat(sum / 11).isCloseTo(0.06, within(0.01));
    }

    static double dayMm(double cover, double windMps, double dewPointC) {
        HourlyAir air = new HourlyAir(
                Skies.START,
                Skies.air(24).airTempC(),
                Skies.all(24, dewPointC),
                Skies.all(24, windMps),
                Skies.all(24, cover));
        return Arrays.stream(
                        EvaporationDemand.of(air, Skies.FARM, 250).referenceEvapotranspirationMm())
                .sum();
    }

    @Test
    void cloudAndDampLowerTheDemandAndWindRaisesIt() {
        assertThat(dayMm(0.9, 2, 12)).isLessThan(dayMm(0.2, 2, 12));
        assertThat(dayMm(0.2, 2, 18)).isLessThan(dayMm(0.2, 2, 12));
        assertThat(dayMm(0.2, 5, 12)).isGreaterThan(dayMm(0.2, 2, 12));
    }

    /** FAO-56 table 2: 4 to 7 mm a day for a warm, temperate subhumid summer day (from memory). */
    @Test
    void aFairJulyDayAsksForFiveOrSixMillimetres() {
        assertThat(dayMm(0.3, 2.5, 14)).isBetween(4.5, 7.0);
    }

    @Test
    void demandIsNeverBelowZeroNotEvenOnADewyNight() {
        HourlyAir damp = new HourlyAir(
                Skies.START,
                Skies.all(24, 15),
                Skies.all(24, 20),
                Skies.all(24, 1),
                Skies.all(24, 0));
        assertThat(Arrays.stream(EvaporationDemand.of(damp, Skies.FARM, 250)
                                .referenceEvapotranspirationMm())
                        .min()
                        .orElseThrow())
                .isNotNegative();
    }
}
