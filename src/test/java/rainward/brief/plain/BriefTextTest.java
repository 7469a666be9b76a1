package rainward.brief.plain;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.brief.BriefDays;
import rainward.brief.DaySketch;
import rainward.brief.Golden;
import rainward.farm.UnitSystem;

/** The brief as an old phone shows it. */
class BriefTextTest {

    static Stream<String> days() {
        return BriefDays.all().keySet().stream();
    }

    private static String text(String day, UnitSystem units) {
        DaySketch sketch = BriefDays.day(day);
        return BriefText.of(sketch.brief(), units);
    }

    @ParameterizedTest
    @MethodSource("days")
    void readsAsKept(String day) {
        Golden.check("brief/" + day + ".txt", text(day, UnitSystem.US_CUSTOMARY));
    }

    @Test
    void readsAsKeptInMetricUnits() {
        Golden.check(
                "brief/dry-storm-in-three-days-metric.txt",
                text("dry-storm-in-three-days", UnitSystem.METRIC));
    }

    @ParameterizedTest
    @MethodSource("days")
    void noLineIsWiderThan72Columns(String day) {
        for (UnitSystem units : UnitSystem.values()) {
            assertThat(text(day, units).lines())
                    .allSatisfy(line ->
                            assertThat(Columns.width(line)).as(line).isLessThanOrEqualTo(72));
        }
    }

    @ParameterizedTest
    @MethodSource("days")
    void saysWhereItComesFromAndWhatGoesBeforeIt(String day) {
        assertThat(text(day, UnitSystem.US_CUSTOMARY).replace('\n', ' '))
                .contains("WHERE THIS COMES FROM")
                .contains("Labels, local codes and licensed practice go before");
    }
}
