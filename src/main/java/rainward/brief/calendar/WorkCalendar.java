package rainward.brief.calendar;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rainward.brief.Orders;
import rainward.brief.Orders.FieldLine;
import rainward.brief.Orders.StageLine;
import rainward.brief.calendar.WorkEvent.Version;

/**
 * All work of the order in force, and what fell out of it. An event keeps its UID and counts its
 * SEQUENCE up with each change, so that calendars move events and double none; work that fell out
 * is cancelled by name, because a calendar does not miss what it is not told of.
 *
 * @param events by start
 */
public record WorkCalendar(List<WorkEvent> events) {

    /** No order was given out yet. */
    public static final WorkCalendar EMPTY = new WorkCalendar(List.of());

    private static final Instant COUNTED_FROM = Instant.parse("2020-01-01T00:00:00Z");

    /** Work that has begun is history and stays to be read. */
    private static final Duration PAST_KEPT = Duration.ofDays(7);

    /** A cancelled event is told until its hours are over by this much. */
    private static final Duration CANCELLED_KEPT = Duration.ofDays(1);

    public WorkCalendar {
        events = List.copyOf(events);
    }

    /** The calendar once another order is in force. */
    public WorkCalendar after(Orders orders, Instant at) {
        Map<String, WorkEvent> known = new HashMap<>();
        events.forEach(event -> known.put(event.uid(), event));
        Map<String, WorkEvent> next = new LinkedHashMap<>();
        planned(orders, at).forEach((uid, event) -> {
            Optional<WorkEvent> before = Optional.ofNullable(known.remove(uid));
            next.put(uid, before.map(b -> newer(b, event, at)).orElse(event));
        });
        known.values().forEach(gone -> left(gone, at).ifPresent(e -> next.put(e.uid(), e)));
        return new WorkCalendar(next.values().stream()
                .sorted(Comparator.comparing((WorkEvent e) -> e.stage().work().from())
                        .thenComparing(WorkEvent::uid))
                .toList());
    }

    /** The part of it that is done with some machines. */
    public WorkCalendar of(Set<String> machines) {
        return new WorkCalendar(events.stream()
                .filter(event -> machines.contains(event.stage().hands().machine()))
                .toList());
    }

    /** The part of it that one person does. */
    public WorkCalendar ofPerson(String name) {
        return new WorkCalendar(events.stream()
                .filter(event -> event.stage().hands().person().equals(name))
                .toList());
    }

    private static Map<String, WorkEvent> planned(Orders orders, Instant at) {
        Map<String, WorkEvent> all = new LinkedHashMap<>();
        Stream.of(orders.today(), orders.later())
                .flatMap(List::stream)
                .forEach(line -> line.stages().forEach(stage -> {
                    String uid = free(all.keySet(), key(line, stage));
                    all.put(uid, event(uid, line, stage, at));
                }));
        return all;
    }

    private static WorkEvent event(String uid, FieldLine line, StageLine stage, Instant at) {
        return new WorkEvent(
                uid,
                new Version(minutes(at), at, false),
                line.place(),
                stage,
                stage.operation() == rainward.farm.Operation.SEED
                        ? line.sown().map(Orders.Sown::mix)
                        : Optional.empty());
    }

    private static WorkEvent newer(WorkEvent before, WorkEvent now, Instant at) {
        return now.withVersion(
                now.saysTheSameAs(before) ? before.version() : next(before, at, false));
    }

    private static Optional<WorkEvent> left(WorkEvent gone, Instant at) {
        boolean cancelled = gone.version().cancelled();
        boolean begun = !gone.stage().work().from().isAfter(at);
        Duration kept = cancelled ? CANCELLED_KEPT : PAST_KEPT;
        if (gone.stage().work().to().plus(kept).isBefore(at)) {
            return Optional.empty();
        }
        return Optional.of(cancelled || begun ? gone : gone.withVersion(next(gone, at, true)));
    }

    /** Minutes since 2020, so that a number never falls back where the records were lost. */
    private static Version next(WorkEvent before, Instant at, boolean cancelled) {
        int sequence = Math.max(before.version().sequence() + 1, minutes(at));
        return new Version(sequence, at, cancelled);
    }

    private static int minutes(Instant at) {
        return Math.toIntExact(Duration.between(COUNTED_FROM, at).toMinutes());
    }

    /** Field, stage, machine and year; spelled in hexadecimal to be safe. */
    private static String key(FieldLine line, StageLine stage) {
        String words = line.place().field()
                + '/'
                + stage.stage()
                + '/'
                + stage.hands().machine()
                + '/'
                + stage.work().from().toString().substring(0, 4);
        return HexFormat.of().formatHex(words.getBytes(StandardCharsets.UTF_8));
    }

    /** A stage in several stretches is several events. */
    private static String free(Set<String> taken, String key) {
        String uid = key + "@rainward";
        for (int n = 2; taken.contains(uid); n++) {
            uid = key + "-" + n + "@rainward";
        }
        return uid;
    }
}
