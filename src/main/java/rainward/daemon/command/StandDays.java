package rainward.daemon.command;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.office.StandChecks;
import rainward.farm.DayClock;
import rainward.input.check.CheckDay;

/**
 * When seeded fields are to be looked at, as a command answers.
 *
 * @param today day of the question
 * @param checks the first to look at first
 */
record StandDays(LocalDate today, List<Line> checks) {

    /**
     * One field.
     *
     * @param field its name
     * @param mix in the ground
     * @param sownOn day it went in
     * @param seed dry, growing or lost
     * @param early one time in ten it is up before, if a stand is to be expected
     * @param middle half of the time it is up by then
     * @param late one time in ten it is up after
     * @param look first day to look
     * @param due true where that day has come
     * @param why that is the day
     */
    record Line(
            String field,
            String mix,
            LocalDate sownOn,
            CheckDay.Seed seed,
            Optional<LocalDate> early,
            Optional<LocalDate> middle,
            Optional<LocalDate> late,
            LocalDate look,
            boolean due,
            String why) {}

    StandDays {
        checks = List.copyOf(checks);
    }

    static StandDays of(Office office, Optional<String> field) {
        LocalDate today = LocalDate.ofInstant(office.now(), office.zone());
        Optional<String> name = field.map(office::fieldNamed);
        List<Line> lines =
                office
                        .store()
                        .read(books -> new StandChecks(office).all(books, office.now()))
                        .stream()
                        .filter(check ->
                                name.isEmpty() || check.item().field().name().equals(name.get()))
                        .map(check -> line(check, today))
                        .toList();
        if (name.isPresent() && lines.isEmpty()) {
            throw Refusal.badInput(
                    name.get() + " has no seed in the ground that waits for a look.");
        }
        return new StandDays(today, lines);
    }

    private static Line line(StandChecks.Check check, LocalDate today) {
        CheckDay day = check.day();
        return new Line(
                check.item().field().name(),
                check.item().mix(),
                day.sownOn(),
                day.seed(),
                day.emergence().map(range -> day.sownOn().plusDays((long) range.earlyDays())),
                day.emergence().map(range -> day.sownOn().plusDays((long) range.middleDays())),
                day.emergence().map(range -> day.sownOn().plusDays((long) range.lateDays())),
                check.due(),
                day.isDue(today),
                why(check));
    }

    private static String why(StandChecks.Check check) {
        return switch (check.day().seed()) {
            case DRY -> "waits for rain; nothing to see before";
            case LOST -> "taken for lost (" + check.cause().orElse("cause unknown") + "): dig";
            case GROWING ->
                check.day().reason() == CheckDay.Reason.SHOULD_SHOW
                        ? "a stand should show by then"
                        : "what comes up later is too late";
        };
    }

    String text(Office office) {
        if (checks.isEmpty()) {
            return "No seeded field waits for a look.";
        }
        DayClock clock = office.dayClock();
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("field", "mix", "sown", "half up by", "range", "look from", "why then"));
        checks.forEach(line -> rows.add(List.of(
                line.field(),
                line.mix(),
                clock.day(line.sownOn()),
                half(clock, line),
                line.early().isPresent()
                        ? line.early().map(clock::day).orElse("") + " - "
                                + line.late().map(clock::day).orElse("")
                        : "",
                line.due() ? "now" : clock.day(line.look()),
                line.why())));
        return Sheets.columns(rows);
    }

    private static String half(DayClock clock, Line line) {
        return line.seed() == CheckDay.Seed.LOST
                ? "never"
                : line.middle().map(clock::day).orElse("not known");
    }
}
