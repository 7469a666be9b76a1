package rainward.daemon.command;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.farm.Window;
import rainward.weather.rain.RainObservation;
import rainward.weather.rain.RainOrigin;

/** Takes a gauge reading. */
@Command(
        name = "rain",
        description = {
            "Write down what the gauge of a property held.",
            "",
            "The farm's own gauge outranks every other source for its hours. Safe to repeat; a",
            "later reading for the same hours corrects an earlier one."
        })
public final class RainCommand extends OfficeCommand {

    private static final double MOST_MM = 500;

    @Parameters(
            index = "0",
            paramLabel = "PROPERTY",
            description = "The property, or the beginning of its name.")
    String property = "";

    @Parameters(
            index = "1",
            paramLabel = "AMOUNT",
            description = "In the units of the farm, or with its own: 0.45, 0.45in, 11mm.")
    String amount = "";

    @Option(
            names = "--at",
            paramLabel = "TIME",
            description = "When it was read: HH:MM today, or YYYY-MM-DD HH:MM. Else now.")
    @Nullable
    String at;

    @Option(
            names = "--since",
            paramLabel = "TIME",
            description = "When it was last empty. Else a day before it was read.")
    @Nullable
    String since;

    @Option(names = "--by", paramLabel = "NAME", description = "Who read it.")
    String by = "office";

    /** What was written, as JSON shows it. */
    record Answer(
            String property,
            double rainMm,
            OffsetDateTime from,
            OffsetDateTime to,
            boolean isNew) {}

    @Override
    int work(Office office) {
        String name = office.propertyNamed(property);
        UnitSystem units = office.settings().farm().units();
        double rainMm = millimetres(amount, units);
        Window window = window(office);
        RainObservation rain =
                new RainObservation(window, rainMm, RainOrigin.GAUGE_SOURCE, office.now());
        boolean isNew = office.store().inTransaction(books -> books.rain().add(name, rain, by));
        Answer answer = new Answer(
                name,
                rainMm,
                window.from().atZone(office.zone()).toOffsetDateTime(),
                window.to().atZone(office.zone()).toOffsetDateTime(),
                isNew);
        show(
                answer,
                () -> name + ": " + units.rain(rainMm)
                        + (isNew ? " written down." : " stood there already."));
        return 0;
    }

    private Window window(Office office) {
        Instant now = office.now();
        LocalDate today = now.atZone(office.zone()).toLocalDate();
        Instant to = at == null ? now : StageCommand.moment(at, today, office.zone());
        Instant from = since == null
                ? to.atZone(office.zone()).minusDays(1).toInstant()
                : StageCommand.moment(since, today, office.zone());
        if (!from.isBefore(to)) {
            throw Refusal.badInput("The gauge was empty at " + since + ", not before it was read:"
                    + " give --since a time before --at.");
        }
        if (to.isAfter(now.plusSeconds(300))) {
            throw Refusal.badInput("The reading at " + at + " is still to come: give --at a time"
                    + " that has passed.");
        }
        return new Window(from, to);
    }

    /** A number in the units of the farm, or with in or mm behind it. */
    static double millimetres(String text, UnitSystem units) {
        String plain = text.strip().toLowerCase(Locale.ROOT);
        boolean metric = plain.endsWith("mm");
        boolean inches = plain.endsWith("in") || plain.endsWith("\"");
        String number = plain.replaceFirst("\\s*(mm|in|\")$", "");
        UnitSystem meant = metric ? UnitSystem.METRIC : inches ? UnitSystem.US_CUSTOMARY : units;
        try {
            double rainMm = meant.inside(Quantity.RAIN, Double.parseDouble(number));
            if (rainMm >= 0 && rainMm <= MOST_MM) {
                return rainMm;
            }
        } catch (NumberFormatException e) {
            // Told below, with what would be right.
        }
        throw Refusal.badInput("'" + text + "' is no amount of rain: write for instance 0.45in or"
                + " 11mm, from 0 to " + units.rain(MOST_MM) + ".");
    }
}
