package rainward.weather.alert;

import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.weather.alert.AlertState.State;

/**
 * All public alerts of one place through time. Messages of one event are chained by their
 * references, so that each event is told once. An alert that is gone from one answer may flicker;
 * gone from two, cancelled or past its own end, it has ended. While the feed is down it is neither:
 * nobody knows.
 *
 * @param entries by id of the message, in order of arrival
 */
public record AlertLedger(Map<String, Entry> entries) {

    /** Nothing known yet. */
    public static final AlertLedger EMPTY = new AlertLedger(Map.of());

    private static final int MISSES_TO_END = 2;
    private static final Duration KEPT = Duration.ofDays(7);

    public AlertLedger {
        entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
    }

    /**
     * One message.
     *
     * @param state where it stands
     * @param chain id of the first message of its event
     * @param misses good answers in a row without it
     */
    public record Entry(AlertState state, String chain, int misses) {}

    /** Alerts that are in force or may be: active ones, and those of which nobody knows. */
    public List<AlertState> standing() {
        return entries.values().stream()
                .map(Entry::state)
                .filter(s -> s.state() == State.ACTIVE || s.state() == State.UNKNOWN)
                .toList();
    }

    /** A message, if it is known. */
    public Optional<Entry> of(String id) {
        return Optional.ofNullable(entries.get(id));
    }

    /**
     * Takes in one poll.
     *
     * @param answer all messages in force; empty where the feed is down
     * @param asOf now
     */
    public AlertLedger after(Optional<List<PublicAlert>> answer, Instant asOf) {
        Map<String, Entry> next = new LinkedHashMap<>(entries);
        answer.ifPresent(messages -> {
            miss(next, messages, asOf);
            // A list has no order of its own, and an update means nothing before what it updates.
            messages.stream()
                    .sorted(Comparator.comparing(m -> m.times().sentAt()))
                    .forEach(m -> take(next, m, asOf));
        });
        if (answer.isEmpty()) {
            next.replaceAll((id, e) ->
                    e.state().state() == State.ACTIVE ? moved(e, State.UNKNOWN, asOf) : e);
        }
        next.replaceAll((id, e) -> endedByItself(e, asOf));
        next.values().removeIf(e -> over(e) && e.state().since().plus(KEPT).isBefore(asOf));
        return new AlertLedger(next);
    }

    private static void miss(Map<String, Entry> next, List<PublicAlert> messages, Instant asOf) {
        Map<String, PublicAlert> sent = new HashMap<>();
        messages.forEach(m -> sent.put(m.id(), m));
        next.replaceAll((id, e) -> {
            if (over(e) || sent.containsKey(id)) {
                return e;
            }
            int misses = e.misses() + 1;
            State state = misses >= MISSES_TO_END ? State.ENDED : State.ACTIVE;
            Entry now = moved(e, state, asOf);
            return new Entry(now.state(), now.chain(), misses);
        });
    }

    private static void take(Map<String, Entry> next, PublicAlert message, Instant asOf) {
        Optional<Entry> known = Optional.ofNullable(next.get(message.id()));
        if (known.isPresent()) {
            if (!over(known.get())) {
                Entry active = moved(known.get(), State.ACTIVE, asOf);
                next.put(message.id(), new Entry(active.state(), active.chain(), 0));
            }
            return;
        }
        // An edge of the service that lags behind shows what a later message has done away with.
        Optional<Entry> later = next.values().stream()
                .filter(e -> e.state().alert().replaces().contains(message.id()))
                .findFirst();
        boolean cancel = message.message().type() == PublicAlert.Type.CANCEL;
        String chain = later.map(Entry::chain)
                .or(() -> replaced(next, message))
                .or(() -> twin(next, message))
                .orElse(message.id());
        for (String id : message.replaces()) {
            next.computeIfPresent(
                    id, (k, e) -> moved(e, cancel ? State.ENDED : State.REPLACED, asOf));
        }
        State state = later.isPresent() ? State.REPLACED : cancel ? State.ENDED : State.ACTIVE;
        next.put(message.id(), new Entry(new AlertState(message, state, asOf), chain, 0));
    }

    private static Optional<String> replaced(Map<String, Entry> next, PublicAlert message) {
        return message.replaces().stream()
                .flatMap(id -> Stream.ofNullable(next.get(id)))
                .map(Entry::chain)
                .findFirst();
    }

    /** The same product sent under another id: same words, area and times. */
    private static Optional<String> twin(Map<String, Entry> next, PublicAlert message) {
        return next.values().stream()
                .filter(e -> e.state().alert().message().equals(message.message())
                        && e.state().alert().times().equals(message.times()))
                .map(Entry::chain)
                .findFirst();
    }

    private static Entry endedByItself(Entry entry, Instant asOf) {
        boolean ended = !over(entry) && entry.state().alert().times().endedAt(asOf);
        return ended ? moved(entry, State.ENDED, asOf) : entry;
    }

    private static boolean over(Entry entry) {
        State state = entry.state().state();
        return state == State.ENDED || state == State.REPLACED;
    }

    private static Entry moved(Entry entry, State to, Instant asOf) {
        AlertState now = entry.state();
        return now.state() == to || over(entry)
                ? entry
                : new Entry(new AlertState(now.alert(), to, asOf), entry.chain(), entry.misses());
    }
}
