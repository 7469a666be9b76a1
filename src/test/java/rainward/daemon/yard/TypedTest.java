package rainward.daemon.yard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.daemon.office.Refusal;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;

/** Amounts as commands take them. */
class TypedTest {

    private static double typed(String text, Quantity quantity, UnitSystem farm) {
        return Typed.amount("--it", text, quantity, farm);
    }

    private static String number(double value) {
        return BigDecimal.valueOf(value).toPlainString();
    }

    /** One amount, written in either system and at a farm of either, is one amount. */
    @ParameterizedTest
    @EnumSource(
            value = Quantity.class,
            names = {"AREA", "MASS", "RATE", "WIDTH", "DEPTH"})
    void oneAmountIsTheSameInUsAndMetric(Quantity quantity) {
        var luck = new SplittableRandom(20260713);
        for (int i = 0; i < 500; i++) {
            double inside = Math.exp(luck.nextDouble(-5, 9));
            for (UnitSystem units : UnitSystem.values()) {
                String bare = number(units.shown(quantity, inside));
                for (UnitSystem farm : UnitSystem.values()) {
                    assertThat(typed(bare + " " + units.symbol(quantity), quantity, farm))
                            .isCloseTo(inside, within(inside * 1e-9));
                }
                assertThat(typed(bare, quantity, units)).isCloseTo(inside, within(inside * 1e-9));
            }
        }
    }

    /** Exact by definition: the international pound, foot and acre (NIST SP 811, appendix B). */
    @ParameterizedTest
    @CsvSource({
        "2 acres,     AREA,  0.80937128448",
        "2 ac,        AREA,  0.80937128448",
        "3 hectares,  AREA,  3",
        "5 lbs,       MASS,  2.26796185",
        "5 pounds,    MASS,  2.26796185",
        "1 lb/acre,   RATE,  1.12085116",
        "1 lbs/ac,    RATE,  1.12085116",
        "10 feet,     WIDTH, 3.048",
        "1 foot,      WIDTH, 0.3048",
        "2 inches,    DEPTH, 5.08"
    })
    void everySpellingIsTakenEverywhere(String text, Quantity quantity, double inside) {
        assertThat(typed(text, quantity, UnitSystem.METRIC)).isCloseTo(inside, within(1e-8));
    }

    @ParameterizedTest
    @ValueSource(strings = {"-3lb", "-3", "lb", "", "3 stone", "NaN", "1e400", "three", "3ha"})
    void whatIsNoWeightIsRefusedWithWhatWouldBeRight(String text) {
        assertThatThrownBy(() -> typed(text, Quantity.MASS, UnitSystem.US_CUSTOMARY))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("--it is '" + text + "'")
                .hasMessageContaining("12lb or 5kg");
    }

    @Test
    void nothingIsNoRate() {
        assertThatThrownBy(
                        () -> Typed.positive("--rate", "0lb/ac", Quantity.RATE, UnitSystem.METRIC))
                .hasMessageContaining("must be above 0");
    }
}
