package rainward.brief.making;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rainward.brief.Alert.Step;
import rainward.weather.alert.AlertLedger;
import rainward.weather.alert.PublicAlert;
import rainward.weather.alert.PublicAlert.Severity;

/** What is news of a public alert, and what is not. */
class AlertStepsTest {

    private static final Instant NOW = Instant.parse("2026-07-15T18:00:00Z");
    private static final Instant END = NOW.plus(Duration.ofHours(6));

    private AlertLedger ledger = AlertLedger.EMPTY;
    private Instant now = NOW;

    private static PublicAlert alert(
            String id, PublicAlert.Type type, Instant end, String... replaces) {
        return new PublicAlert(
                id,
                new PublicAlert.Message(
                        type, "Flood Watch", "words of " + id, "", "Three counties"),
                new PublicAlert.Rank(Severity.MODERATE, "Likely", "Expected"),
                new PublicAlert.Times(NOW, NOW, Optional.of(end)),
                Set.of(replaces));
    }

    private List<Step> see(PublicAlert... alerts) {
        AlertLedger before = ledger;
        now = now.plusSeconds(120);
        ledger = ledger.after(Optional.of(List.of(alerts)), now);
        return AlertSteps.between(before, ledger, now).stream()
                .map(AlertSteps.Told::step)
                .toList();
    }

    @Test
    void itsIssueIsNewsOnce() {
        assertThat(see(alert("1", PublicAlert.Type.ALERT, END))).containsExactly(Step.OPENED);
        assertThat(see(alert("1", PublicAlert.Type.ALERT, END))).isEmpty();
    }

    @Test
    void otherHoursAreNewsOtherWordsAreNot() {
        see(alert("1", PublicAlert.Type.ALERT, END));

        assertThat(see(alert("2", PublicAlert.Type.UPDATE, END, "1"))).isEmpty();
        assertThat(see(alert("3", PublicAlert.Type.UPDATE, END.plusSeconds(7200), "2")))
                .containsExactly(Step.CHANGED);
        assertThat(AlertSteps.between(AlertLedger.EMPTY, ledger, now))
                .singleElement()
                .satisfies(told -> assertThat(told.chain()).isEqualTo("1"));
    }

    @Test
    void aCancellationIsNews() {
        see(alert("1", PublicAlert.Type.ALERT, END));

        assertThat(see(alert("2", PublicAlert.Type.CANCEL, END, "1"))).containsExactly(Step.CLOSED);
        assertThat(see(alert("2", PublicAlert.Type.CANCEL, END, "1"))).isEmpty();
    }

    @Test
    void anUpdateThatStandsBeforeItsAlertInTheListIsOneNews() {
        PublicAlert first = alert("1", PublicAlert.Type.ALERT, END);
        PublicAlert update =
                sent(1, alert("2", PublicAlert.Type.UPDATE, END.plusSeconds(7200), "1"));

        assertThat(see(update, first)).containsExactly(Step.OPENED);
        assertThat(AlertSteps.between(AlertLedger.EMPTY, ledger, now))
                .singleElement()
                .satisfies(told -> assertThat(told.alert()).isEqualTo(update));
    }

    @Test
    void whatALaggingEdgeStillShowsIsNoNews() {
        PublicAlert first = alert("1", PublicAlert.Type.ALERT, END);
        assertThat(see(sent(1, alert("2", PublicAlert.Type.UPDATE, END, "1"))))
                .containsExactly(Step.OPENED);
        assertThat(see(first)).as("the update is known, its alert is not").isEmpty();
        assertThat(see(sent(2, alert("3", PublicAlert.Type.CANCEL, END, "2", "1"))))
                .containsExactly(Step.CLOSED);
        assertThat(see(first, sent(1, alert("2", PublicAlert.Type.UPDATE, END, "1"))))
                .isEmpty();
    }

    @Test
    void aCancellationOfWhatWasNeverSeenIsNoNewsAndNeitherIsWhatItCancels() {
        assertThat(see(sent(2, alert("3", PublicAlert.Type.CANCEL, END, "1")))).isEmpty();
        assertThat(see(alert("1", PublicAlert.Type.ALERT, END))).isEmpty();
        assertThat(ledger.standing()).isEmpty();
    }

    private static PublicAlert sent(int minutesLater, PublicAlert alert) {
        PublicAlert.Times times = alert.times();
        return new PublicAlert(
                alert.id(),
                alert.message(),
                alert.rank(),
                new PublicAlert.Times(
                        times.sentAt().plusSeconds(60L * minutesLater),
                        times.startsAt(),
                        times.endsAt()),
                alert.replaces());
    }

    @Test
    void goneFromTwoAnswersIsNewsFromOneIsNot() {
        see(alert("1", PublicAlert.Type.ALERT, END));

        assertThat(see()).isEmpty();
        assertThat(see()).containsExactly(Step.CLOSED);
        assertThat(see()).isEmpty();
    }

    @Test
    void theEndOfItsOwnHoursIsNone() {
        see(alert("1", PublicAlert.Type.ALERT, NOW.plusSeconds(300)));
        now = NOW.plusSeconds(400);

        assertThat(see(alert("1", PublicAlert.Type.ALERT, NOW.plusSeconds(300))))
                .isEmpty();
        assertThat(see()).isEmpty();
    }
}
