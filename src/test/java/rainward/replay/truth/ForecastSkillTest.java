package rainward.replay.truth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ForecastSkillTest {

    /**
     * Brier scores of 12-hour chances in summer, about 0.08 to 0.12 on the first day and 0.16 to
     * 0.20 on days five to seven: orders of magnitude, from memory, where three periods in ten are
     * wet.
     */
    @ParameterizedTest
    @CsvSource({"6, 0.08, 0.12", "18, 0.08, 0.12", "108, 0.16, 0.20", "150, 0.16, 0.20"})
    void brierScoresAreThoseOfPublicForecasts(double leadHours, double least, double most) {
        double brier = (1 - ForecastSkill.brierSkill(leadHours)) * 0.3 * 0.7;

        assertThat(brier).isBetween(least, most);
    }

    @Test
    void skillFallsWithLead() {
        for (int h = 0; h < 240; h += 6) {
            assertThat(ForecastSkill.brierSkill(h + 6))
                    .isLessThanOrEqualTo(ForecastSkill.brierSkill(h));
        }
    }

    @Test
    void correlationGivesTheSkillItIsAskedFor() {
        for (double skill : new double[] {0.1, 0.3, 0.52}) {
            double correlation = ForecastSkill.correlation(skill, 0.25);

            assertThat(ForecastSkill.skillOf(correlation, 0.25)).isCloseTo(skill, within(1e-3));
        }
    }
}
