package rainward.daemon.command;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Spelled;
import rainward.queue.sample.Fortnight;
import rainward.queue.sample.GeneratedDays;

/** How steady the order is while forecasts come and go. */
@Command(
        name = "stability",
        description = {
            "Live through invented fortnights, one for each kind of weather, planning anew every",
            "twelve hours under a forecast that keeps most of the error of the one before: how much",
            "of what the crew was told for the next day is moved, with the price of change and with",
            "plans made afresh, and what steadiness costs. It takes a few minutes; fewer tries take",
            "less."
        })
final class BenchStability implements Callable<Integer> {

    @Option(names = "--tries", paramLabel = "N", description = "Of each plan; else 30000.")
    long tries = 30_000;

    @Option(
            names = "--price",
            paramLabel = "SHARE",
            description = "Of moving an item, as a share of the order's worth; else 0.01.")
    double price = 0.01;

    @Option(names = "--json", description = "Print JSON.")
    boolean json;

    @Spec
    CommandSpec spec = CommandSpec.create();

    /** The figures, as JSON shows them. */
    record Answer(List<Fortnight.Steadiness> stability) {}

    @Override
    public Integer call() {
        if (tries < 1) {
            throw Refusal.badInput("--tries is " + tries + ", must be 1 or more.");
        }
        if (!(price >= 0 && price <= 0.5)) {
            throw Refusal.badInput("--price is " + price + ", must be 0 to 0.5.");
        }
        List<Fortnight.Steadiness> all = Arrays.stream(GeneratedDays.Kind.values())
                .map(kind -> Fortnight.of(kind, tries, price))
                .toList();
        PrintWriter out = spec.commandLine().getOut();
        out.println(json ? Sheets.json(new Answer(all)) : text(all));
        return 0;
    }

    private static String text(List<Fortnight.Steadiness> all) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("kind", "moved", "moved afresh", "cost"));
        all.forEach(s -> rows.add(List.of(
                Spelled.spaced(s.kind()),
                percent(s.movedPct()),
                percent(s.freshMovedPct()),
                percent(s.costPct()))));
        return Sheets.columns(rows);
    }

    private static String percent(double value) {
        return String.format(Locale.ROOT, "%.1f %%", value);
    }
}
