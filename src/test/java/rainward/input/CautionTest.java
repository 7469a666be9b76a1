package rainward.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What can hurt somebody is said, and nothing that a label has to say is guessed. */
class CautionTest {
    static final LocalDate SPRAYED = LocalDate.of(2026, 7, 1);

    @Test
    void withoutTheLabelsIntervalNothingIsSownOnAnyDay() {
        PlantBack unread = new PlantBack("weed spray", "turnip", SPRAYED, OptionalInt.empty());

        assertThat(unread.firstSowing()).isEmpty();
        assertThat(unread.stops(SPRAYED.plusYears(3)).orElseThrow().text())
                .contains("read it from the label")
                .contains("turnip is not sown");
    }

    @Test
    void theLabelsIntervalEndsOnItsDay() {
        PlantBack read = new PlantBack("weed spray", "turnip", SPRAYED, OptionalInt.of(30));

        assertThat(read.stops(SPRAYED.plusDays(29)).orElseThrow().text()).contains("2026-07-31");
        assertThat(read.stops(SPRAYED.plusDays(30))).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(
            value = Caution.class,
            names = {"HYDRATED_LIME", "SEED_CONTACT", "TREATED_SEED", "PLANT_BACK"})
    void aCautionDefersToLabelOrTag(Caution caution) {
        assertThat(caution.text()).containsAnyOf("label", "tag");
    }
}
