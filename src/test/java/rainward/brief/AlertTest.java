package rainward.brief;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.window.WindowDecision;

/** From a decision to an alert. */
class AlertTest {

    private static final DaySketch FRIDAY = new DaySketch(BriefDays.THURSDAY.plusDays(1));

    private static final Alert.Origin ORIGIN =
            new Alert.Origin(SampleCrew.FARM, SampleCrew.DETROIT, FRIDAY.at(0, "05:40"));

    private static WindowDecision decision(WindowDecision.Step step, boolean send) {
        return new WindowDecision(
                step,
                send,
                BriefDays.window(FRIDAY),
                WindowDecision.Reason.NEW_WINDOW,
                "useful rain\nis likely");
    }

    @ParameterizedTest
    @CsvSource({"OPEN, OPENED", "CHANGE, CHANGED", "CLOSE, CLOSED"})
    void aDecisionToSendBecomesNews(WindowDecision.Step decided, Alert.Step step) {
        Alert alert = Alert.of(ORIGIN, decision(decided, true), 2).orElseThrow();

        assertThat(alert.news().step()).isEqualTo(step);
        assertThat(alert.news().number()).isEqualTo(2);
        assertThat(alert.news().thread()).isEqualTo("window/w1");
        assertThat(alert.why()).isEqualTo("useful rain\\nis likely");
    }

    @Test
    void aDecisionToKeepStillIsNoAlert() {
        assertThat(Alert.of(ORIGIN, decision(WindowDecision.Step.OPEN, false), 1))
                .isEmpty();
        assertThat(Alert.of(ORIGIN, decision(WindowDecision.Step.KEEP, true), 1))
                .isEmpty();
    }
}
