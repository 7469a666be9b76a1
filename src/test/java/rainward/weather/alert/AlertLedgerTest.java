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

/**
 * Alerts through time: kept once, ended by word or by their own times, unknown while nobody sees.
 */
class AlertLedgerTest {

    private static final Instant NOW = Instant.parse("2026-07-15T18:00:00Z");
    private static final PublicAlert WATCH = alert("1", PublicAlert.Type.ALERT, Set.of());

    @Test
    void anAlertIsKeptOnce() {
        var first = AlertLedger.EMPTY.after(Optional.of(List.of(WATCH)), NOW);
        var again = first.after(Optional.of(List.of(WATCH)), minutes(2));
        assertThat(again.entries()).hasSize(1);
        assertThat(state(again, "1")).isEqualTo(State.ACTIVE);
        assertThat(again.of("1").orElseThrow().state().since()).isEqualTo(NOW);
    }

    @Test
    void anUpdateReplacesItInTheSameChain() {
        var update = alert("2", PublicAlert.Type.UPDATE, Set.of("1"));
        var step = seen(WATCH).after(Optional.of(List.of(update)), minutes(2));
        assertThat(chain(step, "2")).isEqualTo("1");
        assertThat(state(step, "1")).isEqualTo(State.REPLACED);
        assertThat(state(step, "2")).isEqualTo(State.ACTIVE);
        assertThat(step.standing()).hasSize(1);
    }

    @Test
    void aCancellationEndsItAtOnce() {
        var cancel = alert("3", PublicAlert.Type.CANCEL, Set.of("1"));
        var step = seen(WATCH).after(Optional.of(List.of(cancel)), minutes(2));
        assertThat(chain(step, "3")).isEqualTo("1");
        assertThat(state(step, "1")).isEqualTo(State.ENDED);
        assertThat(step.standing()).isEmpty();
    }

    @Test
    void anUpdateOfSomethingNeverSeenBeginsAChain() {
        var update = alert("2", PublicAlert.Type.UPDATE, Set.of("0"));
        var step = AlertLedger.EMPTY.after(Optional.of(List.of(update)), NOW);
        assertThat(chain(step, "2")).isEqualTo("2");
        assertThat(step.standing()).hasSize(1);
    }

    @Test
    void goneFromOneAnswerIsAFlickerFromTwoTheEnd() {
        var once = seen(WATCH).after(Optional.of(List.of()), minutes(2));
        assertThat(state(once, "1")).isEqualTo(State.ACTIVE);
        var back = once.after(Optional.of(List.of(WATCH)), minutes(4));
        var gone = back.after(Optional.of(List.of()), minutes(6))
                .after(Optional.of(List.of()), minutes(8));
        assertThat(state(gone, "1")).isEqualTo(State.ENDED);
    }

    @Test
    void whileTheFeedIsDownNobodyKnows() {
        var down = seen(WATCH).after(Optional.empty(), minutes(2));
        assertThat(state(down, "1")).isEqualTo(State.UNKNOWN);
        assertThat(down.standing()).hasSize(1);
        var up = down.after(Optional.of(List.of(WATCH)), minutes(90));
        assertThat(state(up, "1")).isEqualTo(State.ACTIVE);
    }

    @Test
    void itEndsByItsOwnTimeThroughAnOutageToo() {
        var down = seen(WATCH).after(Optional.empty(), minutes(2));
        var later = down.after(Optional.empty(), NOW.plus(Duration.ofHours(6)));
        assertThat(state(later, "1")).isEqualTo(State.ENDED);
    }

    @Test
    void theSameWordsUnderAnotherIdAreTheSameChain() {
        var twin = alert("7", PublicAlert.Type.ALERT, Set.of());
        var step = seen(WATCH).after(Optional.of(List.of(WATCH, twin)), minutes(2));
        assertThat(chain(step, "7")).isEqualTo("1");
    }

    @Test
    void anAlertThatEndedBeforeItWasSeenNeverStands() {
        var step =
                AlertLedger.EMPTY.after(Optional.of(List.of(WATCH)), NOW.plus(Duration.ofHours(9)));
        assertThat(step.standing()).isEmpty();
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
        return AlertLedger.EMPTY.after(Optional.of(List.of(alert)), NOW);
    }

    private static State state(AlertLedger ledger, String id) {
        return ledger.of(id).orElseThrow().state().state();
    }

    private static String chain(AlertLedger ledger, String id) {
        return ledger.of(id).orElseThrow().chain();
    }

    private static Instant minutes(int minutes) {
        return NOW.plus(Duration.ofMinutes(minutes));
    }

    private static PublicAlert alert(String id, PublicAlert.Type type, Set<String> replaces) {
        return new PublicAlert(
                id,
                new Message(type, "Severe Thunderstorm Watch", "Watch", "", "Two townships"),
                new Rank(Severity.SEVERE, "Likely", "Expected"),
                new Times(NOW, NOW, Optional.of(NOW.plus(Duration.ofHours(5)))),
                replaces);
    }
}
