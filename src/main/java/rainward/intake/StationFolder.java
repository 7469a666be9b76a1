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
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rainward.farm.GeoPoint;
import rainward.soil.verify.StationDay;
import rainward.soil.verify.StationYear;
import rainward.weather.climate.DailyWeather;

/**
 * A folder of station files: CSV, one station a file, named after it ({@link StationForm}), or half
 * hours ({@link HalfHourFile}).
 */
public final class StationFolder {

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
                    files.filter(f -> isTable(f) || isHalfHours(f)).sorted().toList();
            if (tables.isEmpty()) {
                throw new BadTableException(folder + " holds no station file (*.csv, or *.dat)");
            }
            return tables.stream()
                    .map(f -> isTable(f) ? station(f) : HalfHourFile.read(f))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean isTable(Path file) {
        return file.toString().endsWith(".csv");
    }

    private static boolean isHalfHours(Path file) {
        return file.toString().endsWith(".dat");
    }

    /**
     * The same, where a file holds several years parted by calendar year.
     *
     * @throws BadTableException as {@link #stations}
     */
    public List<StationYear> years() {
        return stations().stream().flatMap(StationFolder::byYear).toList();
    }

    private static Stream<StationYear> byYear(StationYear all) {
        Map<Integer, List<StationDay>> years = all.days().stream()
                .collect(Collectors.groupingBy(
                        d -> d.weather().day().getYear(), TreeMap::new, Collectors.toList()));
        return years.values().stream()
                .filter(days -> days.size() > 1)
                .map(days -> new StationYear(all.station(), all.place(), days));
    }

    private static StationYear station(Path file) {
        List<TableRow> rows = rows(file);
        TableRow first = rows.get(0);
        StationForm form = StationForm.of(first);
        TreeMap<LocalDate, StationDay> days = new TreeMap<>();
        for (TableRow row : rows) {
            StationDay day = row.build(() -> form.day(row));
            days.put(day.weather().day(), day);
        }
        GeoPoint place = first.build(() -> form.place(first));
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
        return rows;
    }

    private static List<StationDay> withoutGaps(NavigableMap<LocalDate, StationDay> days) {
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
