package rainward.daemon.yard.command;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.command.OfficeCommand;
import rainward.daemon.office.Office;
import rainward.daemon.yard.LoadDesk;
import rainward.daemon.yard.SupplyDesk;
import rainward.daemon.yard.Typed;
import rainward.daemon.yard.spread.SpreadDesk;
import rainward.daemon.yard.spread.SpreadFigures;
import rainward.farm.UnitSystem;
import rainward.input.Caution;
import rainward.input.spread.FieldSpread;

/** Says what lime and fertilizer a field gets. */
@Command(
        name = "spread",
        description = {
            "Lime and fertilizer by field: this year's dose and what is owed to later years, the",
            "blend, its cost, and the pH to expect, as a range.",
            "",
            "From the newest soil test, what was spread and harvested since, and the advice named",
            "in the settings. What a test does not tell is named with what to ask for."
        })
public final class SpreadCommand extends OfficeCommand {

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FIELD",
            description = "The field, or the beginning of its name; else all.")
    @Nullable
    String field;

    @Option(
            names = "--from-shed",
            description =
                    "Out of what is in the shed and no more, shared in the order of the" + " work.")
    boolean fromShed;

    @Option(names = "--units", paramLabel = "UNITS", description = "us or metric.")
    @Nullable
    String units;

    @Override
    protected int work(Office office) {
        SpreadDesk desk = new SpreadDesk(office);
        LoadDesk loads = new LoadDesk(office);
        LocalDate today = loads.today();
        List<String> order = fromShed ? loads.spreadOrder(today) : List.of();
        Optional<String> name = Optional.ofNullable(field).map(office::fieldNamed);
        List<FieldSpread> all = office.store()
                .read(books -> fromShed
                        ? desk.fromShed(books, today, new SupplyDesk(office).stock(books), order)
                        : desk.all(books, today));
        UnitSystem shown = Typed.units(units, office.settings().farm().units());
        List<SpreadFigures> figures = all.stream()
                .filter(one -> name.map(one.asked().plot().field()::equals).orElse(true))
                .map(one -> SpreadFigures.of(one, shown))
                .toList();
        show(figures, () -> text(figures));
        return 0;
    }

    private static String text(List<SpreadFigures> all) {
        List<String> lines = new ArrayList<>();
        for (SpreadFigures one : all) {
            lines.add(one.field() + ", " + one.area() + " " + one.areaUnit()
                    + String.format(Locale.ROOT, ", $%.2f", one.usd()));
            one.words().forEach(words -> lines.add("  " + words));
            one.gaps().forEach(gap -> lines.add("  NOT KNOWN: " + gap.text()));
        }
        lines.add("");
        lines.add(Caution.LIME_DUST.text());
        lines.add(Caution.SEED_CONTACT.text());
        return String.join(System.lineSeparator(), lines);
    }
}
