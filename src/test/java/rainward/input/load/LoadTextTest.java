package rainward.input.load;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rainward.brief.Golden;
import rainward.farm.UnitSystem;

/** The sheet as it is mailed and printed. */
class LoadTextTest {

    @Test
    void readsAsReviewed() {
        Golden.check("load/sheet.txt", text(UnitSystem.US_CUSTOMARY));
    }

    @ParameterizedTest
    @EnumSource(UnitSystem.class)
    void noLineIsWiderThan72Columns(UnitSystem units) {
        assertThat(text(units).lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(72));
    }

    private static String text(UnitSystem units) {
        return LoadText.of(LoadSheetTest.TUESDAY, units, Demo.ZONE);
    }
}
