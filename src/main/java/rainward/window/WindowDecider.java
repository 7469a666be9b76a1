package rainward.window;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rainward.window.WindowDecision.Reason;
import rainward.window.WindowDecision.Step;

/** Decides what to say about storm windows; deciding twice says it once. */
public final class WindowDecider {

    /** Rain whose middle arrival lies within this of the last look is the same rain. */
    private static final Duration SAME_RAIN = Duration.ofHours(18);

    private static final Duration KEPT_SENT = Duration.ofDays(2);
    private static final int KEPT_IDS = 50;

    private final WindowRecord before;
    private final WindowRules rules;
    private final Instant now;
    private final List<Instant> sent;
    private final List<String> closed;
    private final List<WindowDecision> decisions = new ArrayList<>();
    private final List<WindowRecord.Open> open = new ArrayList<>();

    private WindowDecider(WindowRecord before, WindowRules rules, Instant now) {
        this.before = before;
        this.rules = rules;
        this.now = now;
        sent = new ArrayList<>(before.sent());
        int old = Math.max(0, before.closed().size() - KEPT_IDS);
        closed = new ArrayList<>(before.closed().subList(old, before.closed().size()));
        sent.removeIf(at -> at.isBefore(now.minus(KEPT_SENT)));
    }

    /**
     * What was decided, and what to remember.
     *
     * @param decisions one for each window seen or open
     * @param next the record for the next decision
     */
    public record Decided(List<WindowDecision> decisions, WindowRecord next) {

        public Decided {
            decisions = List.copyOf(decisions);
        }
    }

    /**
     * Decides, from what was decided before and what is seen now.
     *
     * @param before what was decided so far
     * @param seen windows seen now, also unlikely ones
     * @param rules when a window is worth a message
     * @param now the moment of deciding
     * @return decisions with reasons, and the next record
     */
    public static Decided decide(
            WindowRecord before, List<StormWindow> seen, WindowRules rules, Instant now) {
        WindowDecider decider = new WindowDecider(before, rules, now);
        Set<StormWindow> unmatched = new HashSet<>(seen);
        for (WindowRecord.Open window : before.open()) {
            Optional<StormWindow> same = seen.stream()
                    .filter(unmatched::contains)
                    .filter(s -> sameRain(window.latest(), s))
                    .findFirst();
            same.ifPresent(unmatched::remove);
            decider.goOn(window, same);
        }
        seen.stream().filter(unmatched::contains).forEach(decider::meet);
        return new Decided(
                decider.decisions, new WindowRecord(decider.open, decider.sent, decider.closed));
    }

    private static boolean sameRain(StormWindow a, StormWindow b) {
        boolean shares = a.properties().stream().anyMatch(b.properties()::contains);
        Duration apart = Duration.between(a.arrival().p50(), b.arrival().p50()).abs();
        return shares && apart.compareTo(SAME_RAIN) <= 0;
    }

    private void meet(StormWindow seen) {
        if (seen.chance() < rules.watch().openChance()) {
            keep(seen, Reason.NOT_LIKELY, "useful rain has a chance of " + percent(seen) + " only");
        } else if (seen.fits().isEmpty()) {
            keep(seen, Reason.NOTHING_LEFT_TO_SEED, "no field can be seeded before it");
        } else {
            StormWindow named = withId(seen, freshId(seen));
            tell(
                    new WindowRecord.Open(named, Optional.empty(), now),
                    Step.OPEN,
                    Reason.NEW_WINDOW,
                    opening(named));
        }
    }

    private static String opening(StormWindow window) {
        return "useful rain is likely ("
                + percent(window)
                + ") and "
                + window.fits().size()
                + (window.fits().size() == 1 ? " field fits" : " fields fit")
                + " before it";
    }

    private void goOn(WindowRecord.Open window, Optional<StormWindow> same) {
        if (same.isEmpty()) {
            boolean due = !now.isBefore(window.latest().arrival().p10());
            close(
                    window,
                    due ? Reason.RAIN_CAME : Reason.RAIN_FADED,
                    due ? "the rain is due by now" : "useful rain is no longer in sight");
            return;
        }
        StormWindow seen = withId(same.get(), window.latest().id());
        WindowRecord.Open current = new WindowRecord.Open(seen, window.told(), window.openedAt());
        if (seen.chance() < rules.watch().closeChance()) {
            close(current, Reason.RAIN_FADED, "the chance has fallen to " + percent(seen));
        } else if (seen.fits().isEmpty()) {
            close(current, Reason.NOTHING_LEFT_TO_SEED, "nothing is left to seed before it");
        } else if (window.told().isEmpty()) {
            tell(current, Step.OPEN, Reason.NEW_WINDOW, opening(seen));
        } else {
            change(current, window.told().get());
        }
    }

    private void change(WindowRecord.Open window, StormWindow told) {
        StormWindow seen = window.latest();
        Duration shift = Duration.between(told.arrival().p50(), seen.arrival().p50());
        Set<String> lost = lost(told, seen);
        double step = seen.chance() - told.chance();
        if (!lost.isEmpty()) {
            tell(
                    window,
                    Step.CHANGE,
                    Reason.FIELD_FITS_NO_MORE,
                    String.join(", ", lost) + " no longer fits before the rain");
        } else if (shift.abs().compareTo(leastShift(told)) >= 0) {
            tell(
                    window,
                    Step.CHANGE,
                    Reason.ARRIVAL_MOVED,
                    "the rain comes "
                            + Math.round(shift.abs().toMinutes() / 60.0)
                            + " h "
                            + (shift.isNegative() ? "earlier" : "later")
                            + " than was told");
        } else if (Math.abs(step) >= rules.change().stepChance()) {
            tell(
                    window,
                    Step.CHANGE,
                    Reason.CHANCE_MOVED,
                    "the chance is now " + percent(seen) + ", was " + percent(told));
        } else {
            open.add(window);
            keep(seen, Reason.NO_CHANGE, "as it was told");
        }
    }

    /**
     * Fields that were told to fit and are now told to be left; those seeded since are in neither.
     */
    private static Set<String> lost(StormWindow told, StormWindow seen) {
        Set<String> lost = new java.util.TreeSet<>();
        told.fits().forEach(f -> lost.add(f.field()));
        lost.retainAll(seen.leave());
        return lost;
    }

    /** The further off the rain, the more its arrival may move without a message. */
    private Duration leastShift(StormWindow told) {
        Duration ahead = Duration.between(now, told.arrival().p50());
        long shareS = (long) (Math.max(0, ahead.getSeconds()) * rules.change().shiftFraction());
        Duration share = Duration.ofSeconds(shareS);
        Duration least = rules.change().leastShift();
        return share.compareTo(least) > 0 ? share : least;
    }

    private void close(WindowRecord.Open window, Reason reason, String words) {
        boolean news = window.told().isPresent() && reason == Reason.RAIN_FADED;
        Optional<Reason> held = news
                ? MessageManners.held(rules.manners(), sent, now, Optional.empty())
                : Optional.empty();
        if (held.isPresent()) {
            open.add(window);
            keep(window.latest(), held.get(), "held back: " + words);
            return;
        }
        if (news) {
            sent.add(now);
        }
        closed.add(window.latest().id());
        decisions.add(new WindowDecision(Step.CLOSE, news, window.latest(), reason, words));
    }

    private void tell(WindowRecord.Open window, Step step, Reason reason, String words) {
        Optional<Instant> first = window.latest().fits().stream()
                .map(StormWindow.Fit::lastSafeStart)
                .min(Instant::compareTo);
        Optional<Reason> held = MessageManners.held(rules.manners(), sent, now, first);
        if (held.isPresent()) {
            open.add(window);
            decisions.add(new WindowDecision(
                    step, false, window.latest(), held.get(), "held back: " + words));
            return;
        }
        sent.add(now);
        open.add(new WindowRecord.Open(
                window.latest(), Optional.of(window.latest()), window.openedAt()));
        decisions.add(new WindowDecision(step, true, window.latest(), reason, words));
    }

    private void keep(StormWindow window, Reason reason, String words) {
        decisions.add(new WindowDecision(Step.KEEP, false, window, reason, words));
    }

    /** Named after its first property and the day the rain was due when it opened. */
    private String freshId(StormWindow seen) {
        LocalDate day = seen.arrival().p50().atZone(rules.manners().zone()).toLocalDate();
        String id = seen.properties().first() + " " + day;
        Set<String> taken = new HashSet<>(closed);
        before.open().forEach(o -> taken.add(o.latest().id()));
        open.forEach(o -> taken.add(o.latest().id()));
        String free = id;
        for (int n = 2; taken.contains(free); n++) {
            free = id + " " + n;
        }
        return free;
    }

    private static StormWindow withId(StormWindow w, String id) {
        return new StormWindow(
                id,
                w.properties(),
                w.chance(),
                w.arrival(),
                w.amount(),
                w.hardRainChance(),
                w.fits(),
                w.leave());
    }

    private static String percent(StormWindow window) {
        return Math.round(100 * window.chance()) + "%";
    }
}
