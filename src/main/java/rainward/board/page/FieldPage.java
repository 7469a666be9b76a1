package rainward.board.page;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import rainward.board.house.Entry;
import rainward.board.house.FieldFile;
import rainward.board.house.Standing;
import rainward.board.picture.Curve;
import rainward.board.picture.RainStrip;
import rainward.board.picture.TimeScale;
import rainward.brief.words.Reader;
import rainward.cycle.Outlook;
import rainward.farm.DayClock;
import rainward.farm.Field;
import rainward.farm.FieldStatus;
import rainward.farm.Mix;
import rainward.farm.StageRecord;
import rainward.farm.Window;
import rainward.queue.reasons.FieldReason;
import rainward.readiness.Figures;
import rainward.readiness.Readiness;

/**
 * All about one field.
 *
 * @param frame around it
 * @param name of the field
 * @param facts what it is, a line each
 * @param state where it stands, in a word
 * @param stages of its recipe, with what was done
 * @param may what can be said of it
 * @param wish what is wanted there, as boxes hold it
 * @param score readiness and why it stands where it does
 * @param drawings chance, water and rain over the days ahead
 * @param history the newest first
 */
public record FieldPage(
        Frame frame,
        String name,
        List<String> facts,
        String state,
        List<Step> stages,
        May may,
        Wish wish,
        Optional<Score> score,
        Optional<Drawings> drawings,
        List<Line> history) {

    /**
     * A stage of the recipe.
     *
     * @param name of the stage
     * @param words what was done
     * @param open true where it is still to do
     * @param begun true where it is under way
     * @param told true where something can be taken back
     */
    public record Step(String name, String words, boolean open, boolean begun, boolean told) {}

    /**
     * What can be said of it.
     *
     * @param property whose gauge can be read
     * @param waits true where it is in the order or could be
     * @param sown true where somebody can look what came up
     * @param bound pinned, held or dropped, in words; empty where it is free
     */
    public record May(String property, boolean waits, boolean sown, String bound) {}

    /**
     * What is wanted there, as boxes hold it.
     *
     * @param area with its unit
     * @param priority 1 is usual
     * @param recipe in use
     * @param recipes there are
     * @param mixes the wanted one first
     * @param known names of all mixes
     * @param edge its boundary
     */
    public record Wish(
            String area,
            String priority,
            String recipe,
            List<String> recipes,
            String mixes,
            String known,
            Edge edge) {}

    /**
     * The boundary of a field.
     *
     * @param words what it holds
     * @param link to its form
     * @param path of its form
     */
    public record Edge(String words, String link, String path) {

        static Edge of(Frame frame, FieldFile file) {
            String path = MePage.SettingsPage.path(
                    Entry.BOUNDARY, Optional.of(file.item().field().name()));
            return file.boundaryHa()
                    .map(ha -> new Edge(
                            "Its boundary holds " + frame.reader().units().area(ha) + ".",
                            "Replace its boundary",
                            path))
                    .orElseGet(() -> new Edge(
                            "It has no boundary yet: it lies at a point.",
                            "Give it a boundary",
                            path));
        }
    }

    /**
     * Readiness and rank.
     *
     * @param readiness 0 to 100
     * @param parts rain, moisture and heat in words
     * @param reason one line
     * @param gates what stops it
     * @param rank place in the order in words
     * @param why each piece of work is not sooner
     */
    public record Score(
            int readiness,
            String parts,
            String reason,
            List<String> gates,
            String rank,
            List<String> why) {}

    /**
     * Drawings over the days ahead, one above the other on the same scale.
     *
     * @param ticks days
     * @param chances one curve a mix
     * @param plannedX hour of seeding in the order
     * @param chanceWords the same in words
     * @param water at seed depth, where it was reckoned
     * @param waterWords the same in words
     * @param rain at the property
     */
    public record Drawings(
            List<TimeScale.Tick> ticks,
            List<Curve> chances,
            Optional<String> plannedX,
            String chanceWords,
            Optional<Curve> water,
            String waterWords,
            Optional<RainStrip> rain) {}

    /** A line of the history. */
    public record Line(String when, String by, String words, String note, boolean counts) {}

    /** Water that reaches the upper edge of the drawing [m3/m3]; about what soil holds at most. */
    private static final double FULL_FRACTION = 0.5;

    public static FieldPage of(Frame frame, FieldFile file) {
        Field field = file.item().field();
        Optional<Outlook.FieldOutlook> seen =
                frame.standing().round().flatMap(r -> r.outlook().field(field.name()));
        FieldStatus status = file.item().status();
        return new FieldPage(
                frame,
                field.name(),
                facts(frame, field),
                status.state().words(),
                steps(frame, field, status),
                may(frame, field, status),
                wish(frame, file),
                seen.filter(f -> status.waiting()).map(f -> score(frame, f)),
                seen.filter(f -> !f.stands().isEmpty()).map(f -> drawings(frame, f)),
                file.history().stream().map(l -> line(frame, l)).toList());
    }

    private static List<String> facts(Frame frame, Field field) {
        Reader reader = frame.reader();
        var texture = field.ground().texture();
        List<String> facts = new ArrayList<>();
        facts.add(field.property() + ", " + reader.units().area(field.areaHa()));
        facts.add("Wanted: " + String.join(", else ", field.wish().mixes()) + ", by the recipe "
                + field.wish().recipe());
        facts.add(String.format(
                Locale.ROOT,
                "Soil: %.0f%% sand, %.0f%% clay, %.1f%% organic matter; slope %.0f%%",
                100 * texture.sandFraction(),
                100 * texture.clayFraction(),
                texture.organicMatterPct(),
                100 * field.ground().slopeFraction()));
        mix(frame, field)
                .ifPresent(mix -> facts.add(
                        "Sown " + reader.units().sowingDepth(mix.sowingDepthCm()) + " deep"));
        return facts;
    }

    private static Optional<Mix> mix(Frame frame, Field field) {
        return frame.standing()
                .round()
                .flatMap(r -> r.roster().mixesOf(field).stream().findFirst());
    }

    private static List<Step> steps(Frame frame, Field field, FieldStatus status) {
        DayClock clock = frame.reader().clock();
        return frame.standing().round().stream()
                .flatMap(r -> r.roster().recipeOf(field).stream())
                .flatMap(recipe -> recipe.stages().stream())
                .map(stage -> step(stage.name(), status.of(stage.name()), clock))
                .toList();
    }

    private static Step step(String stage, Optional<StageRecord> told, DayClock clock) {
        Optional<Instant> end = told.flatMap(StageRecord::finishedAt);
        String machine = told.flatMap(StageRecord::machine).map(m -> ", " + m).orElse("");
        String words = end.map(at -> "done " + clock.dateTime(at))
                .or(() -> told.flatMap(StageRecord::startedAt)
                        .map(at -> "under way since " + clock.dayTime(at)))
                .map(text -> text + machine)
                .orElse("still to do");
        return new Step(
                stage, words, end.isEmpty(), told.isPresent() && end.isEmpty(), told.isPresent());
    }

    private static Wish wish(Frame frame, FieldFile file) {
        Field field = file.item().field();
        var roster = frame.standing().round().map(Standing.Round::roster);
        return new Wish(
                frame.reader().units().area(field.areaHa()),
                String.valueOf(field.wish().priority()),
                field.wish().recipe(),
                roster.stream()
                        .flatMap(r -> r.recipes().keySet().stream())
                        .sorted()
                        .toList(),
                String.join(", ", field.wish().mixes()),
                roster.stream()
                        .flatMap(r -> r.mixes().keySet().stream())
                        .sorted()
                        .collect(Collectors.joining(", ")),
                Edge.of(frame, file));
    }

    private static May may(Frame frame, Field field, FieldStatus status) {
        Reader reader = frame.reader();
        String bound = status.pinnedFirst() ? "pinned: it goes before all others" : "";
        String held = status.heldAt(frame.now())
                .map(until -> "left out until " + reader.clock().dateTime(until))
                .orElse("");
        boolean dropped = status.state() == rainward.farm.FieldState.DROPPED;
        String all = dropped
                ? "dropped for this season"
                : String.join(
                        "; ",
                        List.of(bound, held).stream()
                                .filter(text -> !text.isEmpty())
                                .toList());
        boolean sown = status.state() == rainward.farm.FieldState.SEEDED
                || status.state() == rainward.farm.FieldState.UP;
        return new May(field.property(), status.waiting(), sown, all);
    }

    private static Score score(Frame frame, Outlook.FieldOutlook seen) {
        Readiness ready = seen.readiness();
        Standing.Round round = frame.standing().round().orElseThrow();
        Optional<FieldReason> why = Optional.ofNullable(round.reasons().get(ready.field()));
        Optional<String> out = round.outlook().plan().whyLeftOut(ready.field());
        String made = out.map(text -> "; it " + text).orElse("");
        String rank = why.map(w -> rank(w, frame.reader()) + made)
                .orElseGet(() -> "Not in the order: "
                        + out.orElse(seen.item().status().state().words()));
        DayClock clock = frame.reader().clock();
        return new Score(
                ready.score(),
                "rain " + ready.parts().rain() + ", moisture " + ready.parts().moisture()
                        + ", heat " + ready.parts().heat(),
                ready.reason(),
                ready.gates().stream().map(Readiness.Gate::words).toList(),
                rank,
                why.stream()
                        .flatMap(w -> w.items().stream())
                        .map(item -> item.item().place().stage() + " by "
                                + item.item().hands().machine() + ", "
                                + clock.daySpan(item.item().work()) + ": " + item.words())
                        .toList());
    }

    private static String rank(FieldReason why, Reader reader) {
        String loss = reader.units().area(Math.max(0, why.dayLaterHa()));
        String later = loss.equals(reader.units().area(0))
                ? "a day later it would lose nothing"
                : "a day later it would lose " + loss + " of full stand";
        return "Number " + why.rank() + " in the order: " + later
                + why.goodUntil()
                        .map(at -> "; good until " + reader.clock().dayTime(at))
                        .orElse("")
                + why.before().map(other -> "; the seeder comes from " + other).orElse("");
    }

    private static Drawings drawings(Frame frame, Outlook.FieldOutlook seen) {
        Standing.Round round = frame.standing().round().orElseThrow();
        Reader reader = frame.reader();
        var first = seen.stands().get(0);
        Window ahead = new Window(
                first.start(), first.start().plus(Duration.ofHours(first.seedingHours())));
        TimeScale scale = new TimeScale(ahead, frame.standing().farm().zone());
        String field = seen.item().field().name();
        Optional<Instant> planned =
                round.outlook().plan().seedingOf(field).map(item -> item.work().from());
        Readiness.Chances chances = seen.readiness().chances();
        String words = "Seeded at the next possible hour " + Reader.percent(chances.now())
                + ", at best " + Reader.percent(chances.best())
                + chances.bestSeedAt()
                        .map(at -> " " + reader.clock().dayTime(at))
                        .orElse("")
                + planned.map(at -> "; planned " + reader.clock().dayTime(at)).orElse("") + ".";
        Optional<Figures.Course> course =
                seen.readiness().figures().map(f -> f.seedbed().course());
        return new Drawings(
                scale.days(reader.clock()),
                seen.stands().stream().map(s -> Curve.ofChance(s, scale)).toList(),
                planned.map(scale::x),
                words,
                course.map(c -> Curve.ofWater(c, scale, FULL_FRACTION)),
                seen.readiness().figures().map(f -> water(f, reader)).orElse(""),
                Optional.ofNullable(
                                round.outlook().rain().get(seen.item().field().property()))
                        .map(r -> RainStrip.of(
                                r.bars(),
                                new RainStrip.Reading(scale, reader.clock(), reader.units()))));
    }

    private static String water(Figures figures, Reader reader) {
        Figures.Range range = figures.seedbed().waterFraction();
        String rain = figures.rain()
                .first()
                .map(r -> " First useful rain about " + reader.clock().dayTime(r.middle())
                        + " (between " + reader.clock().dayTime(r.earliest()) + " and "
                        + reader.clock().dayTime(r.latest()) + "), "
                        + reader.rainRange(r.amountMm().low(), r.amountMm().high())
                        + " in a day.")
                .orElse("");
        String low = Reader.percent(range.low());
        String high = Reader.percent(range.high());
        return "At the next possible hour " + Reader.percent(range.middle()) + " water by volume"
                + (low.equals(high) ? "." : ", mostly " + low + " to " + high + ".")
                + " Useful rain ahead " + Reader.percent(figures.rain().chance()) + "." + rain;
    }

    private static Line line(Frame frame, FieldFile.Line line) {
        DayClock clock = frame.reader().clock();
        return new Line(
                clock.dateTime(line.at()),
                line.by(),
                line.words(),
                line.note().orElse(""),
                line.counts());
    }
}
