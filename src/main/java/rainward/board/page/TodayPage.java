package rainward.board.page;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rainward.board.house.Standing;
import rainward.board.picture.TimeLine;
import rainward.brief.Brief;
import rainward.brief.Orders;
import rainward.brief.words.CautionWords;
import rainward.brief.words.GroundWords;
import rainward.brief.words.OpeningWords;
import rainward.brief.words.OrderWords;
import rainward.brief.words.Reader;
import rainward.brief.words.SkyWords;
import rainward.queue.model.BetterLater;
import rainward.window.StormWindow;

/**
 * The order of the day.
 *
 * @param frame around it
 * @param who whose work alone is shown, if one person asked
 * @param head what comes first
 * @param line the day by machine
 * @param people tasks by person
 * @param rest what comes later or not at all
 */
public record TodayPage(
        Frame frame,
        Optional<String> who,
        Head head,
        Optional<TimeLine> line,
        Map<String, List<Task>> people,
        Rest rest) {

    /** Tasks of each person that a telephone shows at once; the others are folded away. */
    private static final int NEXT = 3;

    /** Most fields of later days that are listed; the others are on the page of the ground. */
    private static final int MOST_LATER = 60;

    /**
     * What comes first.
     *
     * @param day in words
     * @param headline one or two sentences
     * @param notices what has to be known before all else
     * @param windows open now
     * @param cautions of the day
     */
    public record Head(
            String day,
            String headline,
            List<String> notices,
            List<Opening> windows,
            List<String> cautions) {}

    /**
     * An open storm window.
     *
     * @param lines what it is
     * @param untilMs when the rain may begin, for the countdown [ms since 1970]
     * @param left until then, in words
     * @param fits fields that can be seeded before, with the last safe start
     * @param leave fields to leave
     */
    public record Opening(
            List<String> lines, long untilMs, String left, List<Fit> fits, String leave) {}

    /** A field that fits before the rain. */
    public record Fit(String field, String path, String words) {}

    /**
     * A task.
     *
     * @param rank of the field
     * @param field its name
     * @param path of its page
     * @param stage as the recipe calls it
     * @param when from when to when
     * @param what in words
     * @param where property and area
     * @param machine that does it
     * @param mix that goes in, where seed does
     * @param begun true where it is under way
     * @param reason why the field stands here
     */
    public record Task(
            int rank,
            String field,
            String path,
            String stage,
            String when,
            String what,
            String where,
            String machine,
            String mix,
            boolean begun,
            String reason) {}

    /**
     * What comes later or not at all.
     *
     * @param changes since the brief of the day
     * @param later fields of the days after
     * @param moreLater how many of them are not listed
     * @param kept fields that are not seeded yet because a better day is ahead, with why
     * @param leftOut other fields that are not in the order, with why
     * @param checks stands to look at
     * @param soil in words
     */
    public record Rest(
            List<String> changes,
            List<Later> later,
            int moreLater,
            List<OrderWords.LeftOut> kept,
            List<OrderWords.LeftOut> leftOut,
            List<Look> checks,
            List<String> soil) {}

    /** A field of the days after. */
    public record Later(int rank, String field, String path, String words) {}

    /** What comes first: of a person's work, or of what changed. */
    public <T> List<T> next(List<T> tasks) {
        return tasks.subList(0, Math.min(NEXT, tasks.size()));
    }

    /** What comes after it. */
    public <T> List<T> after(List<T> tasks) {
        return tasks.subList(next(tasks).size(), tasks.size());
    }

    static final Head NO_HEAD =
            new Head("", "The first order is being worked out.", List.of(), List.of(), List.of());

    public static TodayPage of(Frame frame, Optional<String> who) {
        return frame.standing()
                .round()
                .map(round -> of(frame, who, round))
                .orElseGet(() -> new TodayPage(
                        frame,
                        who,
                        NO_HEAD,
                        Optional.empty(),
                        Map.of(),
                        new Rest(
                                List.of(), List.of(), 0, List.of(), List.of(), List.of(),
                                List.of())));
    }

    private static TodayPage of(Frame frame, Optional<String> who, Standing.Round round) {
        Brief brief = round.brief();
        Reader reader = frame.reader();
        OrderWords words = new OrderWords(brief, reader);
        TimeLine line = TimeLine.of(
                round.outlook(),
                reader.clock().wholeDay(brief.heading().day()),
                reader.clock(),
                frame.standing().farm().zone());
        return new TodayPage(
                frame,
                who,
                head(frame, brief),
                line.rows().isEmpty() ? Optional.empty() : Optional.of(line),
                people(round, words, who),
                rest(brief, words, reader));
    }

    private static Head head(Frame frame, Brief brief) {
        Reader reader = frame.reader();
        OpeningWords opening = new OpeningWords(brief, reader);
        CautionWords cautions = new CautionWords(reader);
        return new Head(
                reader.clock().longDay(brief.heading().day()),
                opening.headline(),
                opening.notices(),
                brief.sky().windows().stream().map(w -> opening(frame, w)).toList(),
                brief.cautions().stream().map(cautions::of).toList());
    }

    private static Opening opening(Frame frame, StormWindow window) {
        Reader reader = frame.reader();
        SkyWords sky = new SkyWords(reader);
        Instant until = window.arrival().p10();
        return new Opening(
                sky.window(window),
                until.toEpochMilli(),
                left(Duration.between(frame.now(), until)),
                window.fits().stream()
                        .map(fit -> new Fit(
                                fit.field(), Frame.fieldPath(fit.field()), fitWords(fit, reader)))
                        .toList(),
                Reader.and(window.leave()));
    }

    private static String fitWords(StormWindow.Fit fit, Reader reader) {
        return "start at the latest " + reader.clock().dayTime(fit.lastSafeStart()) + ", planned "
                + reader.clock().dayTime(fit.plannedStart()) + ", stand "
                + Reader.percent(fit.chance());
    }

    /** Time left in words; the script of the page says the same as time goes by. */
    static String left(Duration left) {
        if (left.isNegative() || left.isZero()) {
            return "it may begin any time";
        }
        return left.toHours() >= 48
                ? left.toDays() + " d " + left.toHoursPart() + " h"
                : left.toHours() + " h " + left.toMinutesPart() + " min";
    }

    private static Map<String, List<Task>> people(
            Standing.Round round, OrderWords words, Optional<String> who) {
        Map<String, List<Task>> people = new TreeMap<>();
        words.byPerson().forEach((person, tasks) -> {
            if (who.isEmpty() || who.get().equals(person)) {
                people.put(
                        person, tasks.stream().map(t -> task(t, round, words)).toList());
            }
        });
        return people;
    }

    private static Task task(OrderWords.Task task, Standing.Round round, OrderWords words) {
        Orders.FieldLine line = task.line();
        Orders.StageLine stage = task.stage();
        String field = line.place().field();
        boolean seeds = stage.operation() == rainward.farm.Operation.SEED;
        return new Task(
                line.rank(),
                field,
                Frame.fieldPath(field),
                stage.stage(),
                words.when(stage),
                OrderWords.what(stage, line),
                words.place(line),
                stage.hands().machine(),
                seeds ? line.sown().map(Orders.Sown::mix).orElse("") : "",
                round.outlook()
                        .field(field)
                        .map(f -> f.item().status().underWay(stage.stage()).isPresent())
                        .orElse(false),
                line.reason());
    }

    private static Rest rest(Brief brief, OrderWords words, Reader reader) {
        List<Orders.FieldLine> later = brief.orders().later();
        GroundWords ground = new GroundWords(reader);
        List<Later> listed = new ArrayList<>();
        later.stream()
                .limit(MOST_LATER)
                .forEach(l -> listed.add(new Later(
                        l.rank(),
                        l.place().field(),
                        Frame.fieldPath(l.place().field()),
                        words.later(l))));
        return new Rest(
                words.changes().stream().limit(MOST_LATER).toList(),
                listed,
                later.size() - listed.size(),
                leftOut(words, true),
                leftOut(words, false),
                brief.ahead().standChecks().stream()
                        .map(check -> new Look(
                                check.field(),
                                Frame.fieldPath(check.field()),
                                ground.toLook(check)))
                        .toList(),
                brief.ground().stream()
                        .map(line -> line.property() + ": " + ground.soil(line))
                        .toList());
    }

    /** A stand to look at, on whose page it is reported. */
    public record Look(String field, String path, String words) {}

    private static List<OrderWords.LeftOut> leftOut(OrderWords words, boolean seedIsKept) {
        return words.leftOut().stream()
                .filter(left -> BetterLater.saidIn(left.why()) == seedIsKept)
                .toList();
    }
}
