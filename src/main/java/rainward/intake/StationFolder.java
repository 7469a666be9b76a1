package rainward.intake;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;
import rainward.farm.GeoPoint;
import rainward.soil.verify.StationDay;
import rainward.soil.verify.StationYear;
import rainward.weather.climate.DailyWeather;
import rainward.weather.climate.TempRange;

/**
 * A folder of station files: the daily form of the US Climate Reference Network as CSV, one station
 * a file, named after it; an empty cell or -99 and below is a value that was not measured.
 */
public final class StationFolder {

    private static final List<String> COLUMNS = List.of(
            "lst_date",
            "longitude",
            "latitude",
            "t_daily_max",
            "t_daily_min",
            "p_daily_calc",
            "solarad_daily",
            "rh_daily_avg",
            "soil_moisture_5_daily",
            "soil_temp_5_daily");

    private static final double NOT_MEASURED = -99;

    private static final ObjectReader ROWS = CsvMapper.builder()
            .enable(CsvParser.Feature.SKIP_EMPTY_LINES)
            .build()
            .readerForMapOf(String.class)
            .with(CsvSchema.emptySchema().withHeader());

    private final Path folder;

    public StationFolder(Path folder) {
        this.folder = folder;
    }

    /**
     * All stations of the folder, by name.
     *
     * @throws BadTableException where there is none, or a file has not this form
     */
    public List<StationYear> stations() {
        if (!Files.isDirectory(folder)) {
            throw new BadTableException(folder + " is no folder, must hold station files (*.csv)");
        }
        try (Stream<Path> files = Files.list(folder)) {
            List<Path> tables =
                    files.filter(f -> f.toString().endsWith(".csv")).sorted().toList();
            if (tables.isEmpty()) {
                throw new BadTableException(folder + " holds no station file (*.csv)");
            }
            return tables.stream().map(StationFolder::station).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static StationYear station(Path file) {
        List<TableRow> rows = rows(file);
        TreeMap<LocalDate, StationDay> days = new TreeMap<>();
        for (TableRow row : rows) {
            StationDay day = row.build(() -> day(row));
            days.put(day.weather().day(), day);
        }
        TableRow first = rows.get(0);
        GeoPoint place = first.build(
                () -> new GeoPoint(first.number("latitude"), first.number("longitude")));
        String name = file.getFileName().toString().replaceFirst("\\.csv$", "");
        return first.build(() -> new StationYear(name, place, withoutGaps(days)));
    }

    private static List<TableRow> rows(Path file) {
        List<TableRow> rows = new ArrayList<>();
        try (MappingIterator<Map<String, String>> lines = ROWS.readValues(file.toFile())) {
            while (lines.hasNextValue()) {
                Map<String, String> cells = lines.nextValue();
                int line = lines.getParser().currentTokenLocation().getLineNr();
                rows.add(new TableRow(file.toString(), line, cells));
            }
        } catch (IOException e) {
            throw new BadTableException(file + " cannot be read: " + e.getMessage());
        }
        if (rows.isEmpty()) {
            throw new BadTableException(file + " has no days, must have a header and a line a day");
        }
        for (String column : COLUMNS) {
            if (!rows.get(0).cells().containsKey(column)) {
                throw new BadTableException(file + " line 1: column " + column + " is missing");
            }
        }
        return rows;
    }

    private static StationDay day(TableRow row) {
        OptionalDouble low = measured(row, "t_daily_min");
        OptionalDouble high = measured(row, "t_daily_max");
        Optional<TempRange> temps = low.isPresent() && high.isPresent()
                ? Optional.of(new TempRange(low.getAsDouble(), high.getAsDouble()))
                : Optional.empty();
        DailyWeather.Sky sky = new DailyWeather.Sky(
                measured(row, "solarad_daily"), humidity(row), OptionalDouble.empty());
        return new StationDay(
                new DailyWeather(date(row), temps, measured(row, "p_daily_calc"), sky),
                measured(row, "soil_moisture_5_daily"),
                measured(row, "soil_temp_5_daily"));
    }

    private static OptionalDouble humidity(TableRow row) {
        OptionalDouble percent = measured(row, "rh_daily_avg");
        return percent.isPresent()
                ? OptionalDouble.of(percent.getAsDouble() / 100)
                : OptionalDouble.empty();
    }

    private static LocalDate date(TableRow row) {
        String text = row.text("lst_date");
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException(
                    "lst_date is '" + text + "', must be a day, for instance 2020-07-31", e);
        }
    }

    private static OptionalDouble measured(TableRow row, String column) {
        if (row.cells().getOrDefault(column, "").isBlank()) {
            return OptionalDouble.empty();
        }
        double value = row.number(column);
        return value <= NOT_MEASURED ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private static List<StationDay> withoutGaps(TreeMap<LocalDate, StationDay> days) {
        return days.firstKey()
                .datesUntil(days.lastKey().plusDays(1))
                .map(day -> days.getOrDefault(day, unknown(day)))
                .toList();
    }

    private static StationDay unknown(LocalDate day) {
        return new StationDay(
                new DailyWeather(
                        day, Optional.empty(), OptionalDouble.empty(), DailyWeather.Sky.UNKNOWN),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }
}
