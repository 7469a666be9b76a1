package rainward.brief.making;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import rainward.brief.Alert.Step;
import rainward.weather.alert.AlertLedger;
import rainward.weather.alert.AlertLedger.Entry;
import rainward.weather.alert.AlertState.State;
import rainward.weather.alert.PublicAlert;

/**
 * What became of the public alerts of one place between two looks: issued, changed in event,
 * severity or hours, or over before their time. An alert that ends at its own end is no news, and
 * one that is worded anew is none either.
 */
public final class AlertSteps {

    private AlertSteps() {}

    /**
     * News of one event.
     *
     * @param alert its newest message
     * @param step what became of it
     * @param chain id of the first message of its event
     */
    public record Told(PublicAlert alert, Step step, String chain) {}

    /** The news between two states of a ledger. */
    public static List<Told> between(AlertLedger before, AlertLedger after, Instant asOf) {
        List<Told> all = new ArrayList<>();
        after.entries()
                .values()
                .forEach(entry -> told(before, entry, after, asOf)
                        .ifPresent(step ->
                                all.add(new Told(entry.state().alert(), step, entry.chain()))));
        return all;
    }

    private static Optional<Step> told(
            AlertLedger before, Entry entry, AlertLedger after, Instant asOf) {
        boolean stands = stands(entry);
        boolean ended = entry.state().alert().times().endedAt(asOf);
        Optional<Entry> earlier = standing(before, entry.chain());
        if (stands
                && !ended
                && !before.entries().containsKey(entry.state().alert().id())) {
            return earlier.isEmpty()
                    ? Optional.of(Step.OPENED)
                    : Optional.of(Step.CHANGED).filter(step -> differs(earlier.get(), entry));
        }
        boolean newest = newest(after, entry.chain()).filter(entry::equals).isPresent();
        boolean over = newest && !stands && !ended && earlier.isPresent();
        return over && standing(after, entry.chain()).isEmpty()
                ? Optional.of(Step.CLOSED)
                : Optional.empty();
    }

    private static boolean stands(Entry entry) {
        State state = entry.state().state();
        return state == State.ACTIVE || state == State.UNKNOWN;
    }

    private static Optional<Entry> standing(AlertLedger ledger, String chain) {
        return ledger.entries().values().stream()
                .filter(entry -> entry.chain().equals(chain) && stands(entry))
                .reduce((first, second) -> second);
    }

    private static Optional<Entry> newest(AlertLedger ledger, String chain) {
        return ledger.entries().values().stream()
                .filter(entry -> entry.chain().equals(chain))
                .reduce((first, second) -> second);
    }

    private static boolean differs(Entry a, Entry b) {
        PublicAlert was = a.state().alert();
        PublicAlert is = b.state().alert();
        return !was.message().event().equals(is.message().event())
                || was.rank().severity() != is.rank().severity()
                || !was.times().startsAt().equals(is.times().startsAt())
                || !Objects.equals(was.times().endsAt(), is.times().endsAt());
    }
}
