package rainward.readiness;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class WhyTest {
    private static final Readiness.Why WHY =
            new Readiness.Why("Seed at dawn, with turnip and rape", "little rain in sight");

    @Test
    void lineSaysWhatToDoAndWhy() {
        assertThat(WHY.line())
                .isEqualTo("Seed at dawn, with turnip and rape: little rain in sight.");
    }

    @Test
    void sentenceLeavesTheHourAndTheMixToTheOrder() {
        assertThat(WHY.sentence()).isEqualTo("Little rain in sight.");
    }

    @Test
    void lineWithoutOpeningIsASentence() {
        assertThat(new Readiness.Why("", "out of season").line()).isEqualTo("Out of season.");
    }
}
