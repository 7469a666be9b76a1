package rainward.store.journal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.Operation;
import rainward.farm.StageRecord;

/** Where a field stands, read from its journal from the first line to the last. */
final class JournalReading {

    private final Map<String, StageRecord> stages = new LinkedHashMap<>();
    private FieldStatus status = FieldStatus.UNTOUCHED;
    private boolean dropped;

    private JournalReading() {}

    static FieldStatus statusOf(List<JournalEntry> entries) {
        JournalReading reading = new JournalReading();
        counting(entries).forEach(reading::take);
        return reading.status();
    }

    /** The lines that count: what was undone does not, nor does the undoing. */
    static List<JournalEntry> counting(List<JournalEntry> entries) {
        Set<Long> undone = entries.stream()
                .flatMap(e -> e.detail().undoes().stream().boxed())
                .collect(Collectors.toSet());
        return entries.stream()
                .filter(e -> e.kind() != JournalEntry.Kind.UNDONE && !undone.contains(e.id()))
                .toList();
    }

    /** The lines that count and belong to the present round of the recipe. */
    static List<JournalEntry> thisRound(List<JournalEntry> entries) {
        List<JournalEntry> round = new ArrayList<>();
        for (JournalEntry entry : counting(entries)) {
            if (endsRound(entry)) {
                round.clear();
            } else {
                round.add(entry);
            }
        }
        return round;
    }

    private static boolean endsRound(JournalEntry entry) {
        return entry.kind() == JournalEntry.Kind.STAND_FAILED
                || entry.kind() == JournalEntry.Kind.STAND_THIN;
    }

    private void take(JournalEntry entry) {
        switch (entry.kind()) {
            case STARTED -> started(entry);
            case DONE -> done(entry);
            case PASSED_OVER -> put(entry, Optional.of(entry.said().at()));
            case HELD -> status = held(entry.detail().heldUntil());
            case FREED -> status = held(Optional.empty());
            case PINNED -> status = pinned(true);
            case UNPINNED -> status = pinned(false);
            case DROPPED -> dropped = true;
            case TAKEN_BACK -> dropped = false;
            case STAND_UP -> status = in(FieldState.UP, status.sownMix());
            case STAND_THIN, STAND_FAILED -> newRound();
            case SOIL_DRY, SOIL_MOIST, SOIL_WET -> {}
            case NOTED -> {
                // Words for people; the field stands as before.
            }
            case UNDONE -> throw new IllegalStateException("an undoing does not count itself");
        }
    }

    private void started(JournalEntry entry) {
        put(entry, Optional.empty());
        workBegan();
    }

    private void done(JournalEntry entry) {
        put(entry, Optional.of(entry.said().at()));
        if (entry.detail().operation().equals(Optional.of(Operation.SEED))) {
            status = in(FieldState.SEEDED, entry.detail().mix());
        } else {
            workBegan();
        }
    }

    private void workBegan() {
        if (status.waiting()) {
            status = in(FieldState.IN_WORK, status.sownMix());
        }
    }

    private void put(JournalEntry entry, Optional<Instant> finished) {
        String stage = entry.detail().stage().orElseThrow();
        Optional<StageRecord> before = Optional.ofNullable(stages.get(stage));
        Optional<Instant> began = entry.kind() == JournalEntry.Kind.STARTED
                ? Optional.of(entry.said().at())
                : before.flatMap(StageRecord::startedAt);
        Optional<String> machine =
                entry.detail().machine().or(() -> before.flatMap(StageRecord::machine));
        stages.put(stage, new StageRecord(stage, began, finished, machine));
    }

    /** What has come up so badly that it is done again starts the recipe anew. */
    private void newRound() {
        stages.clear();
        status = in(FieldState.FAILED, Optional.empty());
    }

    private FieldStatus in(FieldState state, Optional<String> mix) {
        return new FieldStatus(state, List.of(), mix, status.heldUntil(), status.pinnedFirst());
    }

    private FieldStatus held(Optional<Instant> until) {
        return new FieldStatus(
                status.state(), List.of(), status.sownMix(), until, status.pinnedFirst());
    }

    private FieldStatus pinned(boolean first) {
        return new FieldStatus(
                status.state(), List.of(), status.sownMix(), status.heldUntil(), first);
    }

    private FieldStatus status() {
        List<StageRecord> inOrder = stages.values().stream()
                .sorted(Comparator.comparing(s -> latest(s).orElseThrow()))
                .toList();
        return new FieldStatus(
                dropped ? FieldState.DROPPED : status.state(),
                inOrder,
                status.sownMix(),
                status.heldUntil(),
                status.pinnedFirst());
    }

    private static Optional<Instant> latest(StageRecord stage) {
        return Stream.of(stage.finishedAt(), stage.startedAt())
                .flatMap(Optional::stream)
                .findFirst();
    }
}
