package rainward.weather.alert;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rainward.farm.Window;
import rainward.weather.alert.AlertState.State;
import rainward.weather.alert.PublicAlert.Danger;
import rainward.weather.alert.PublicAlert.Message;
import rainward.weather.alert.PublicAlert.Rank;
import rainward.weather.alert.PublicAlert.Severity;
import rainward.weather.alert.PublicAlert.Times;
import rainward.weather.alert.PublicAlert.Type;

/**
 * Alerts through time: told once, ended by word or by their own times, unknown while nobody sees.
 */
class AlertLedgerTest {

    private static final Instant NOW = Instant.parse("2026-07-15T18:00:00Z");
    private static final PublicAlert WATCH = alert("1", Type.ALERT, Set.of());

    @Test
    void anAlertIsToldOnce() {
        var first = AlertLedger.EMPTY.after(Optional.of(List.of(WATCH)), NOW);
        assertThat(first.fresh()).containsExactly(WATCH);
        var again = first.ledger().after(Optional.of(List.of(WATCH)), minutes(2));
        assertThat(again.fresh()).isEmpty();
        assertThat(state(again, "1")).isEqualTo(State.ACTIVE);
        assertThat(again.ledger().of("1").orElseThrow().since()).isEqualTo(NOW);
    }

    @Test
    void anUpdateReplacesItAndIsNotToldAgain() {
        var update = alert("2", Type.UPDATE, Set.of("1"));
        var step = seen(WATCH).after(Optional.of(List.of(update)), minutes(2));
        assertThat(step.fresh()).isEmpty();
        assertThat(state(step, "1")).isEqualTo(State.REPLACED);
        assertThat(state(step, "2")).isEqualTo(State.ACTIVE);
        assertThat(step.ledger().standing()).hasSize(1);
    }

    @Test
    void aCancellationEndsItAtOnce() {
        var cancel = alert("3", Type.CANCEL, Set.of("1"));
        var step = seen(WATCH).after(Optional.of(List.of(cancel)), minutes(2));
        assertThat(step.fresh()).isEmpty();
        assertThat(state(step, "1")).isEqualTo(State.ENDED);
        assertThat(step.ledger().standing()).isEmpty();
    }

    @Test
    void anUpdateOfSomethingNeverSeenIsToldAsNew() {
        var update = alert("2", Type.UPDATE, Set.of("0"));
        assertThat(AlertLedger.EMPTY.after(Optional.of(List.of(update)), NOW).fresh())
                .containsExactly(update);
    }

    @Test
    void goneFromOneAnswerIsAFlickerFromTwoTheEnd() {
        var once = seen(WATCH).after(Optional.of(List.of()), minutes(2));
        assertThat(state(once, "1")).isEqualTo(State.ACTIVE);
        var back = once.ledger().after(Optional.of(List.of(WATCH)), minutes(4));
        assertThat(back.fresh()).isEmpty();
        var gone = back.ledger()
                .after(Optional.of(List.of()), minutes(6))
                .ledger()
                .after(Optional.of(List.of()), minutes(8));
        assertThat(state(gone, "1")).isEqualTo(State.ENDED);
    }

    @Test
    void whileTheFeedIsDownNobodyKnows() {
        var down = seen(WATCH).after(Optional.empty(), minutes(2));
        assertThat(state(down, "1")).isEqualTo(State.UNKNOWN);
        assertThat(down.ledger().standing()).hasSize(1);
        var up = down.ledger().after(Optional.of(List.of(WATCH)), minutes(90));
        assertThat(up.fresh()).as("not told again after an outage").isEmpty();
        assertThat(state(up, "1")).isEqualTo(State.ACTIVE);
    }

    @Test
    void itEndsByItsOwnTimeThroughAnOutageToo() {
        var down = seen(WATCH).after(Optional.empty(), minutes(2));
        var later = down.ledger().after(Optional.empty(), NOW.plus(Duration.ofHours(6)));
        assertThat(state(later, "1")).isEqualTo(State.ENDED);
    }

    @Test
    void theSameWordsUnderAnotherIdAreNotToldAgain() {
        var twin = alert("7", Type.ALERT, Set.of());
        var step = seen(WATCH).after(Optional.of(List.of(WATCH, twin)), minutes(2));
        assertThat(step.fresh()).isEmpty();
    }

    @Test
    void anAlertThatEndedBeforeItWasSeenIsNotTold() {
        var step =
                AlertLedger.EMPTY.after(Optional.of(List.of(WATCH)), NOW.plus(Duration.ofHours(9)));
        assertThat(step.fresh()).isEmpty();
        assertThat(state(step, "1")).isEqualTo(State.ENDED);
    }

    @Test
    void dangersAreReadFromTheNamesOfEvents() {
        assertThat(Danger.of("Severe Thunderstorm Warning")).isEqualTo(Danger.THUNDERSTORM);
        assertThat(Danger.of("Flash Flood Watch")).isEqualTo(Danger.FLOOD);
        assertThat(Danger.of("High Wind Advisory")).isEqualTo(Danger.WIND);
        assertThat(Danger.of("Extreme Heat Warning")).isEqualTo(Danger.HEAT);
        assertThat(Danger.of("Freeze Watch")).isEqualTo(Danger.FROST);
        assertThat(Danger.of("Tornado Watch")).isEqualTo(Danger.TORNADO);
        assertThat(Danger.of("Something New Statement")).isEqualTo(Danger.OTHER);
        assertThat(WATCH.touches(new Window(NOW.minusSeconds(60), NOW))).isFalse();
        assertThat(WATCH.touches(new Window(NOW, NOW.plusSeconds(60)))).isTrue();
    }

    private static AlertLedger seen(PublicAlert alert) {
        return AlertLedger.EMPTY.after(Optional.of(List.of(alert)), NOW).ledger();
    }

    private static State state(AlertLedger.Step step, String id) {
        return step.ledger().of(id).orElseThrow().state();
    }

    private static Instant minutes(int minutes) {
        return NOW.plus(Duration.ofMinutes(minutes));
    }

    private static PublicAlert alert(String id, Type type, Set<String> replaces) {
        return new PublicAlert(
                id,
                new Message(type, "Severe Thunderstorm Watch", "Watch", "", "Two townships"),
                new Rank(Severity.SEVERE, "Likely", "Expected"),
                new Times(NOW, NOW, Optional.of(NOW.plus(Duration.ofHours(5)))),
                replaces);
    }
}
