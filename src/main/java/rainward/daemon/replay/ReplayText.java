package rainward.daemon.replay;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rainward.daemon.command.Sheets;
import rainward.daemon.settings.Spelled;
import rainward.replay.Gains;
import rainward.replay.score.Comparison;
import rainward.replay.score.Interval;
import rainward.replay.score.Losses;

/** A run of seasons in words and columns. */
final class ReplayText {

    private ReplayText() {}

    static String of(ReplayAnswer answer) {
        List<String> lines = new ArrayList<>();
        lines.add(answer.seasons() + " seasons" + (answer.invented() ? ", weather invented" : "")
                + "; means a season. Worth is acres x priority x worth of the stand's date.");
        lines.add("");
        lines.add("Judged by the stand model:");
        lines.add(table(answer.policies()));
        lines.add(closed(answer.gapClosed()));
        lines.add("");
        lines.add("Judged by a plain rule (half an inch within two weeks, a quarter more within ten"
                + " days of it, no two-inch day):");
        lines.add(table(answer.byPlainRule().policies()));
        lines.add(closed(answer.byPlainRule().gapClosed()));
        lines.add("");
        lines.add("Chance that the order gave, and what came of it:");
        answer.reliability()
                .forEach(step -> lines.add(String.format(
                        Locale.US,
                        "  %3.0f %% told, %3.0f %% came (%d fields)",
                        100 * step.toldFraction(),
                        100 * step.cameFraction(),
                        step.fields())));
        lines.add("");
        lines.add(
                "Fields that Rainward lost and the listed order got up, and the other way round:");
        answer.lossesToListed()
                .forEach(line -> lines.add(
                        "  " + cause(line) + ": lost " + line.lost() + ", won " + line.won()));
        if (!answer.trials().isEmpty()) {
            lines.add("");
            lines.add("One thing otherwise, all else as it was:");
            lines.add(Sheets.columns(trials(answer.trials())));
        }
        return String.join(System.lineSeparator(), lines);
    }

    static List<List<String>> trials(List<Gains.Line> trials) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(
                List.of("otherwise", "stand ac (95 %)", "worth (95 %)", "worth by the plain rule"));
        trials.forEach(line -> rows.add(List.of(
                line.name(), range(line.acres()), range(line.worth()), range(line.byPlainRule()))));
        return rows;
    }

    static String cause(Losses.Line line) {
        return line.cause().map(Spelled::spaced).orElse("never seeded");
    }

    static String range(Interval interval) {
        return String.format(
                Locale.US,
                "%+.1f (%+.1f to %+.1f)",
                interval.mean(),
                interval.low(),
                interval.high());
    }

    private static String table(List<Comparison.Line> policies) {
        return Sheets.columns(rows(policies));
    }

    static List<List<String>> rows(List<Comparison.Line> policies) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                "policy",
                "stand ac",
                "worth",
                "95 %",
                "over listed (95 %)",
                "false starts",
                "washed",
                "idle d",
                "km",
                "changes"));
        for (Comparison.Line line : policies) {
            rows.add(List.of(
                    line.name(),
                    one(line.acresEstablished()),
                    one(line.worth()),
                    one(line.worthCi95()[0]) + " to " + one(line.worthCi95()[1]),
                    range(line.overListed()),
                    one(line.falseStarts()),
                    one(line.washedOut()),
                    one(line.idleDays()),
                    String.valueOf(Math.round(line.km())),
                    one(line.orderChanges())));
        }
        return rows;
    }

    static String closed(Comparison.GapClosed gap) {
        return "Of the gap to " + gap.ceiling() + " Rainward closes " + percent(gap.vsAsListed())
                + " from the listed order and " + percent(gap.vsBestHabit()) + " from the best"
                + " habit (" + gap.bestHabit() + "); ten days known without a fault would close "
                + percent(gap.byTenDays()) + " from there.";
    }

    private static String percent(double share) {
        return Double.isNaN(share) ? "none" : Math.round(100 * share) + " %";
    }

    private static String one(double value) {
        return String.format(Locale.US, "%.1f", value);
    }
}
