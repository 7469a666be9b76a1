package rainward.intake;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.farm.Window;
import rainward.weather.rain.RainObservation;

/**
 * Gauge readings as a table: {@code property}, {@code read} (date or date and time, local),
 * {@code rain_in} or {@code rain_mm}, and {@code since} where it was not emptied a day before.
 *
 * @param properties that there are
 * @param zone of the farm's days
 * @param now nothing is read later than that
 */
public record GaugeTable(Collection<String> properties, ZoneId zone, Instant now) {

    /** Common practice of volunteer observers: the gauge is read and emptied at seven. */
    private static final LocalTime USUAL_HOUR = LocalTime.of(7, 0);

    private static final double MOST_MM = 500;

    public GaugeTable {
        properties = List.copyOf(properties);
    }

    /**
     * A reading.
     *
     * @param property whose gauge
     * @param rain what it held
     */
    public record Reading(String property, RainObservation rain) {}

    /** Reads a file: all of it, or nothing and every fault. */
    public Intake<List<Reading>> read(Path file) {
        return SpreadSheet.open(file, sheet -> {
            List<Reading> readings = new ArrayList<>();
            sheet.rows().forEach(row -> reading(row).ifPresent(readings::add));
            if (sheet.rows().isEmpty()) {
                sheet.faults().add("", "holds no reading", "name a file with at least one");
            }
            return sheet.faults().outcome(() -> readings);
        });
    }

    private Optional<Reading> reading(Particulars row) {
        Optional<String> property =
                row.name("property").flatMap(name -> row.oneOf("property", name, properties));
        OptionalDouble rainMm = rainMm(row);
        Optional<Window> window = window(row);
        return property.isPresent() && rainMm.isPresent() && window.isPresent()
                ? Optional.of(new Reading(
                        property.get(),
                        new RainObservation(window.get(), rainMm.getAsDouble(), "gauge", now)))
                : Optional.empty();
    }

    private static OptionalDouble rainMm(Particulars row) {
        if (row.has("rain_in") == row.has("rain_mm")) {
            row.wrong("rain_in", "give either rain_in or rain_mm");
            return OptionalDouble.empty();
        }
        OptionalDouble inches = row.number(
                "rain_in", 0, Math.floor(UnitSystem.US_CUSTOMARY.shown(Quantity.RAIN, MOST_MM)));
        return inches.isPresent()
                ? OptionalDouble.of(
                        UnitSystem.US_CUSTOMARY.inside(Quantity.RAIN, inches.getAsDouble()))
                : row.number("rain_mm", 0, MOST_MM);
    }

    private Optional<Window> window(Particulars row) {
        Optional<Instant> read = moment(row, "read");
        Optional<Instant> since = row.has("since")
                ? moment(row, "since")
                : read.map(at -> at.atZone(zone).minusDays(1).toInstant());
        if (read.isPresent() && since.isPresent() && !since.get().isBefore(read.get())) {
            row.wrong("since", "must come before read");
            return Optional.empty();
        }
        if (read.filter(at -> at.isAfter(now.plus(Duration.ofMinutes(5)))).isPresent()) {
            row.wrong("read", "must not be still to come");
            return Optional.empty();
        }
        return read.flatMap(to -> since.map(from -> new Window(from, to)));
    }

    private Optional<Instant> moment(Particulars row, String column) {
        String text = row.text(column).orElse("").replace('T', ' ');
        try {
            LocalDateTime local = text.length() > 10
                    ? LocalDateTime.parse(text.replace(' ', 'T'))
                    : LocalDate.parse(text).atTime(USUAL_HOUR);
            return Optional.of(local.atZone(zone).toInstant());
        } catch (DateTimeException e) {
            row.wrong(column, "must be a date, 2026-07-14, or a date and time, 2026-07-14 06:30");
            return Optional.empty();
        }
    }
}
