package rainward.intake;

import java.time.Month;
import java.util.Comparator;
import java.util.List;
import rainward.weather.climate.Climate;
import rainward.weather.climate.MonthlyClimate;

/** The usual weather of a region from {@code shared/climate.csv}. */
public final class ClimateTable {

    private static final String FILE = "climate.csv";
    private static final List<String> COLUMNS = List.of(
            "region",
            "month",
            "wet_day_fraction",
            "mean_wet_day_mm",
            "temp_min_c",
            "temp_max_c",
            "elevation_m",
            "source");

    private final TableFolder folder;

    public ClimateTable(TableFolder folder) {
        this.folder = folder;
    }

    /**
     * A region's twelve months.
     *
     * @throws BadTableException where the region is unknown or a month is missing
     */
    public Climate of(String region) {
        List<TableRow> all = folder.rows(FILE, COLUMNS);
        List<TableRow> rows = all.stream()
                .filter(row -> row.text("region").equals(region))
                .sorted(Comparator.comparingDouble(row -> row.number("month")))
                .toList();
        if (rows.size() != 12) {
            throw new BadTableException(FILE + ": region '" + region + "' has " + rows.size()
                    + " months, must have 12; known are "
                    + all.stream().map(row -> row.text("region")).distinct().toList());
        }
        return new Climate(
                region,
                rows.get(0).number("elevation_m"),
                rows.stream().map(row -> row.build(() -> month(row))).toList());
    }

    private static MonthlyClimate month(TableRow row) {
        return new MonthlyClimate(
                Month.of((int) row.number("month")),
                row.number("wet_day_fraction"),
                row.number("mean_wet_day_mm"),
                row.number("temp_min_c"),
                row.number("temp_max_c"));
    }
}
