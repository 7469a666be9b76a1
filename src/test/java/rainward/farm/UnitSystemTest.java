package rainward.farm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class UnitSystemTest {
    private static final UnitSystem US = UnitSystem.US_CUSTOMARY;
    private static final UnitSystem METRIC = UnitSystem.METRIC;

    /** Exact by definition: NIST Special Publication 811, appendix B.8. */
    @ParameterizedTest(name = "{1} inside is {2} in US units ({0})")
    @CsvSource({
        "AREA, 0.40468564224, 1",
        "RAIN, 25.4, 1",
        "DEPTH, 2.54, 1",
        "TEMPERATURE, 0, 32",
        "TEMPERATURE, 100, 212",
        "TEMPERATURE, -40, -40",
        "WIND, 0.44704, 1",
        "SPEED, 1.609344, 1",
        "MASS, 0.45359237, 1",
        "DISTANCE, 1.609344, 1",
        "WIDTH, 0.3048, 1"
    })
    void usUnitsFollowTheirLegalDefinition(Quantity quantity, double inside, double shown) {
        assertThat(US.shown(quantity, inside)).isCloseTo(shown, within(1e-12));
        assertThat(US.inside(quantity, shown)).isCloseTo(inside, within(1e-12));
    }

    /** A pound on an acre, from the two definitions: 0.45359237 / 0.40468564224. */
    @Test
    void aPoundAnAcreIsOnePointOneTwoKilogramsAHectare() {
        assertThat(US.inside(Quantity.RATE, 1)).isCloseTo(1.120851, within(1e-6));
    }

    @Test
    void numbersAreWrittenAsAPersonWould() {
        assertThat(US.rain(12.7)).isEqualTo("0.5 in");
        assertThat(US.rain(3.1)).isEqualTo("0.12 in");
        assertThat(METRIC.rain(12.7)).isEqualTo("12.7 mm");
        assertThat(US.roughRain(11.9)).isEqualTo("0.5 in");
        assertThat(METRIC.roughRain(11.9)).isEqualTo("12 mm");
        assertThat(US.area(1.294994)).isEqualTo("3.2 ac");
        assertThat(US.temp(30)).isEqualTo("86 F");
        assertThat(METRIC.temp(-0.3)).isEqualTo("0 C");
        assertThat(US.mass(9.0718474)).isEqualTo("20 lb");
        assertThat(METRIC.wind(4.47)).isEqualTo("4.5 m/s");
        assertThat(US.width(4.572)).isEqualTo("15 ft");
    }

    /** A short ton is 2000 pounds, a tonne 1000 kg: NIST SP 811, appendix B. */
    @Test
    void bigAmountsAreSpokenOfInTons() {
        assertThat(US.mass(252_667.3 * 0.453_592_37)).isEqualTo("126.3 tons");
        assertThat(US.mass(907.184_74 * 5)).isEqualTo("5 tons");
        assertThat(US.mass(907.184_74 * 4.99)).isEqualTo("9980 lb");
        assertThat(METRIC.mass(12_345)).isEqualTo("12.3 t");
        assertThat(METRIC.mass(4_999.4)).isEqualTo("4999 kg");
        assertThat(METRIC.mass(123.4)).isEqualTo("123 kg");
        assertThat(METRIC.mass(99.44)).isEqualTo("99.4 kg");
    }

    @Test
    void rainThatRoundsToNothingIsKnownAsSuch() {
        assertThat(US.roundsToDry(0.0499 * 25.4)).isTrue();
        assertThat(US.roundsToDry(0.0501 * 25.4)).isFalse();
        assertThat(US.leastRoughRain()).isEqualTo("0.1 in");
        assertThat(METRIC.roundsToDry(0.49)).isTrue();
        assertThat(METRIC.leastRoughRain()).isEqualTo("1 mm");
    }

    @Nested
    class Laws {
        @ParameterizedTest
        @EnumSource(Quantity.class)
        void thereAndBackIsTheSameInBothSystems(Quantity quantity) {
            var numbers = new SplittableRandom(811);
            for (int i = 0; i < 500; i++) {
                double inside = numbers.nextDouble(-500, 500);
                for (UnitSystem units : UnitSystem.values()) {
                    assertThat(units.inside(quantity, units.shown(quantity, inside)))
                            .isCloseTo(inside, within(1e-9));
                }
            }
        }

        @ParameterizedTest
        @EnumSource(Quantity.class)
        void metricShowsWhatIsInside(Quantity quantity) {
            assertThat(METRIC.shown(quantity, 12.5)).isEqualTo(12.5);
        }
    }
}
