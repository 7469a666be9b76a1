package rainward.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import rainward.farm.GeoPoint;
import rainward.soil.verify.StationDay;
import rainward.soil.verify.StationYear;
import rainward.weather.climate.DailyWeather;
import rainward.weather.climate.TempRange;

/**
 * The half-hourly file of the land-surface test case of NOAA, Bondville in Illinois, 1998: 33
 * columns, no header, neither place nor year, so both are those of the test case. Half hours are
 * put together to the days that a station file has; where less than five sixths of a day were
 * measured its value is unknown. Soil temperature at 5 cm lies straight between the probes at 4 and
 * 8 cm.
 */
final class HalfHourFile {

    private static final String NAME = "Bondville 1998";
    private static final GeoPoint PLACE = new GeoPoint(40.01, -88.37);
    private static final LocalDate FIRST = LocalDate.of(1998, 1, 1);
    private static final int COLUMNS = 33;
    private static final int HALF_HOURS = 48;
    private static final int ENOUGH = 40;
    private static final double NOT_MEASURED = -6990;
    private static final double MJ_PER_W = 1800e-6;
    private static final double MM_PER_INCH = 25.4;

    /** Wind of 10 m at 2 m, FAO-56 eq. 47. */
    private static final double WIND_AT_2_M = 0.748;

    private final Path file;
    private final double[][] rows;

    private HalfHourFile(Path file, List<String> lines) {
        this.file = file;
        this.rows = IntStream.range(0, lines.size())
                .mapToObj(i -> row(i, lines.get(i)))
                .toArray(double[][]::new);
    }

    /**
     * Reads a file.
     *
     * @throws BadTableException where it has not this form
     */
    static StationYear read(Path file) {
        try {
            List<String> lines = Files.readAllLines(file);
            if (lines.size() < 2 * HALF_HOURS || lines.size() % HALF_HOURS != 0) {
                throw new BadTableException(file + " has " + lines.size() + " lines, must have "
                        + HALF_HOURS + " for each of two days or more");
            }
            return new HalfHourFile(file, lines).year();
        } catch (IOException e) {
            throw new BadTableException(file + " cannot be read: " + e.getMessage());
        }
    }

    private double[] row(int i, String line) {
        String[] cells = line.strip().split("\\s+");
        if (cells.length != COLUMNS) {
            throw fault(i, "has " + cells.length + " columns, must have " + COLUMNS);
        }
        try {
            double[] row = Arrays.stream(cells).mapToDouble(Double::parseDouble).toArray();
            int minutes = 30 * (i % HALF_HOURS + 1) % 1440;
            int due = minutes / 60 * 100 + minutes % 60;
            if (row[1] != due) {
                throw fault(i, "is of " + cells[1] + ", must be of " + due + " (hours, minutes)");
            }
            return row;
        } catch (NumberFormatException e) {
            throw fault(i, "holds something else than numbers");
        }
    }

    private BadTableException fault(int i, String what) {
        return new BadTableException(file + " line " + (i + 1) + " " + what);
    }

    private StationYear year() {
        List<StationDay> days = new ArrayList<>();
        for (int d = 0; d < rows.length / HALF_HOURS; d++) {
            days.add(day(d));
        }
        return new StationYear(NAME, PLACE, days);
    }

    private StationDay day(int d) {
        double[] air = measured(d, 5);
        OptionalDouble sun = mean(d, 8);
        DailyWeather.Sky sky = new DailyWeather.Sky(
                times(sun, HALF_HOURS * MJ_PER_W), humidity(d), times(mean(d, 3), WIND_AT_2_M));
        Optional<TempRange> temps = air.length < ENOUGH
                ? Optional.empty()
                : Optional.of(new TempRange(
                        Arrays.stream(air).min().orElseThrow(),
                        Arrays.stream(air).max().orElseThrow()));
        OptionalDouble rain = times(mean(d, 13), HALF_HOURS * MM_PER_INCH);
        OptionalDouble at4 = mean(d, 17);
        OptionalDouble at8 = mean(d, 18);
        OptionalDouble at5 = at4.isPresent() && at8.isPresent()
                ? OptionalDouble.of(0.75 * at4.getAsDouble() + 0.25 * at8.getAsDouble())
                : OptionalDouble.empty();
        return new StationDay(
                new DailyWeather(FIRST.plusDays(d), temps, rain, sky), mean(d, 31), at5);
    }

    private double[] measured(int d, int column) {
        return Arrays.stream(rows, d * HALF_HOURS, (d + 1) * HALF_HOURS)
                .mapToDouble(row -> row[column - 1])
                .filter(value -> value > NOT_MEASURED)
                .toArray();
    }

    private OptionalDouble mean(int d, int column) {
        double[] values = measured(d, column);
        return values.length < ENOUGH
                ? OptionalDouble.empty()
                : Arrays.stream(values).average();
    }

    /** The sensor reads up to 105 % in fog. */
    private OptionalDouble humidity(int d) {
        OptionalDouble percent = mean(d, 6);
        return percent.isPresent()
                ? OptionalDouble.of(Math.max(0, Math.min(1, percent.getAsDouble() / 100)))
                : percent;
    }

    /** Sensors read a little below nothing at night. */
    private static OptionalDouble times(OptionalDouble value, double factor) {
        return value.isPresent()
                ? OptionalDouble.of(Math.max(0, value.getAsDouble() * factor))
                : value;
    }
}
