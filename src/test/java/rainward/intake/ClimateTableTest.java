package rainward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import rainward.weather.climate.Climate;

class ClimateTableTest {

    static final ClimateTable TABLE = new ClimateTable(TableFolder.onClassPath());

    @Test
    void julyIsTheWarmestMonthOfTheDemoRegion() {
        Climate climate = TABLE.of("southern michigan");

        double july = climate.on(LocalDate.of(2026, 7, 14)).airTempMaxC();
        assertThat(climate.months()).allMatch(month -> month.airTempMaxC() <= july);
    }

    @Test
    void everyRegionWithDatesOfSowingHasAClimate() {
        assertThat(new SharedTables(TableFolder.onClassPath()).regions())
                .allSatisfy(region -> assertThat(TABLE.of(region).months()).hasSize(12));
    }

    @Test
    void anUnknownRegionIsNamedWithThoseThatAreKnown() {
        assertThatThrownBy(() -> TABLE.of("the moon"))
                .isInstanceOf(BadTableException.class)
                .hasMessageContaining("'the moon' has 0 months")
                .hasMessageContaining("southern michigan");
    }
}
