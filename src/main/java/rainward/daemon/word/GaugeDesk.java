package rainward.daemon.word;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.Locale;
import java.util.Optional;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.farm.Window;
import rainward.store.Books;
import rainward.weather.rain.RainObservation;
import rainward.weather.rain.RainOrigin;

/** Where gauges are read. */
public final class GaugeDesk {

    private static final double MOST_MM = 500;

    private final Office office;

    public GaugeDesk(Office office) {
        this.office = office;
    }

    /**
     * What somebody read.
     *
     * @param property the beginning of its name is enough
     * @param amount as typed: 0.45, 0.45in, 11mm
     * @param at when it was read, as typed; else now
     * @param since when it was last empty, as typed; else a day before
     * @param by who read it
     */
    public record Said(
            String property,
            String amount,
            Optional<String> at,
            Optional<String> since,
            String by) {}

    /** What was written, as JSON shows it. */
    public record Reading(
            String property, double rainMm, OffsetDateTime from, OffsetDateTime to, boolean isNew) {

        /** One sentence for the person. */
        public String words(UnitSystem units) {
            return property + ": " + units.rain(rainMm)
                    + (isNew ? " written down." : " stood there already.");
        }
    }

    /** Writes the reading down. */
    public Reading take(Books books, Said said) {
        String name = office.propertyNamed(said.property());
        double rainMm = millimetres(said.amount(), office.settings().farm().units());
        Window window = window(said);
        RainObservation rain =
                new RainObservation(window, rainMm, RainOrigin.GAUGE_SOURCE, office.now());
        boolean isNew = books.rain().add(name, rain, said.by());
        return new Reading(
                name,
                rainMm,
                window.from().atZone(office.zone()).toOffsetDateTime(),
                window.to().atZone(office.zone()).toOffsetDateTime(),
                isNew);
    }

    private Window window(Said said) {
        ZonedDateTime now = office.now().atZone(office.zone());
        Instant to = Moments.of(said.at(), now);
        Instant from = said.since()
                .map(since -> Moments.of(since, now.toLocalDate(), now.getZone()))
                .orElse(to.atZone(office.zone()).minusDays(1).toInstant());
        if (!from.isBefore(to)) {
            throw Refusal.badInput("The gauge was empty at " + said.since().orElse("")
                    + ", not before it was read: give --since a time before --at.");
        }
        if (to.isAfter(now.toInstant().plusSeconds(300))) {
            throw Refusal.badInput("The reading at " + said.at().orElse("")
                    + " is still to come: give --at a time that has passed.");
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
