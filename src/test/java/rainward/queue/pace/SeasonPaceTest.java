package rainward.queue.pace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.EnumSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SeasonPaceTest {

    private static final LocalDate MONDAY = LocalDate.of(2026, 7, 13);

    private static SeasonPace.Standing standing(int days, double leftHa) {
        return new SeasonPace.Standing(
                MONDAY, MONDAY.plusDays(days - 1L), EnumSet.allOf(DayOfWeek.class), leftHa);
    }

    /** Independent days: fit days are binomial, n = 10, p = 0.6; upper tails from the formula. */
    @ParameterizedTest(name = "{0} fit days of ten: {1}")
    @CsvSource({"6, 0.6331", "8, 0.1673", "3, 0.9877"})
    void theChanceIsThatOfTheBinomialTail(int fitDaysNeeded, double chance) {
        SeasonPace pace = SeasonPace.of(
                standing(10, 2.0 * fitDaysNeeded), new SeasonPace.Days(0.6, 0, 2, 0), 1);
        assertThat(pace.finishChance()).isCloseTo(chance, within(0.035));
    }

    @Test
    void daysOffAreNotCounted() {
        SeasonPace.Standing weekdays = new SeasonPace.Standing(
                MONDAY, MONDAY.plusDays(13), EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY), 20);
        SeasonPace pace = SeasonPace.of(weekdays, new SeasonPace.Days(1, 0, 2, 0), 1);
        assertThat(pace.neededHaPerDay()).isCloseTo(2, within(1e-9));
        assertThat(pace.finishChance()).isEqualTo(1);
    }

    @Test
    void wetSpellsThatLastMakeABareTargetLessSure() {
        SeasonPace.Days mixed = new SeasonPace.Days(0.6, 0, 2, 0.2);
        SeasonPace.Days spells = new SeasonPace.Days(0.6, 0.7, 2, 0.2);
        double sure = SeasonPace.of(standing(20, 18), mixed, 3).finishChance();
        double unsure = SeasonPace.of(standing(20, 18), spells, 3).finishChance();
        assertThat(unsure).isLessThan(sure);
    }

    @Test
    void afterTheLastDayAllThatIsLeftStaysLeft() {
        SeasonPace.Standing late = new SeasonPace.Standing(
                MONDAY, MONDAY.minusDays(1), EnumSet.allOf(DayOfWeek.class), 7);
        SeasonPace pace = SeasonPace.of(late, new SeasonPace.Days(1, 0, 5, 0), 1);
        assertThat(pace.finishChance()).isZero();
        assertThat(pace.p50LeftHa()).isEqualTo(7);
    }

    @Test
    void nothingLeftIsDoneForSure() {
        SeasonPace pace = SeasonPace.of(standing(5, 0), new SeasonPace.Days(0.1, 0, 1, 0), 1);
        assertThat(pace.finishChance()).isEqualTo(1);
    }

    @Test
    void equalSeedsGiveEqualChances() {
        SeasonPace.Days days = new SeasonPace.Days(0.5, 0.4, 2, 0.3);
        assertThat(SeasonPace.of(standing(15, 14), days, 9))
                .isEqualTo(SeasonPace.of(standing(15, 14), days, 9));
    }
}
