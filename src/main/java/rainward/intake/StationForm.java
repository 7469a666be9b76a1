package rainward.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import rainward.farm.GeoPoint;
import rainward.soil.verify.StationDay;
import rainward.weather.climate.DailyWeather;
import rainward.weather.climate.TempRange;

/**
 * Forms in which a station's days are written; which one a file has is told by its header. An empty
 * cell or -99 and below is a value that was not measured.
 */
enum StationForm {

    /** US Climate Reference Network, daily, as CSV. */
    REFERENCE_NETWORK("lst_date", "latitude", "longitude") {
        @Override
        List<String> columns() {
            return List.of(
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
        }

        @Override
        StationDay day(TableRow row) {
            OptionalDouble percent = measured(row, "rh_daily_avg", Unit.SI);
            DailyWeather.Sky sky = new DailyWeather.Sky(
                    measured(row, "solarad_daily", Unit.SI),
                    percent.isPresent()
                            ? OptionalDouble.of(percent.getAsDouble() / 100)
                            : OptionalDouble.empty(),
                    OptionalDouble.empty());
            return new StationDay(
                    new DailyWeather(
                            date(row),
                            temps(
                                    measured(row, "t_daily_min", Unit.SI),
                                    measured(row, "t_daily_max", Unit.SI)),
                            measured(row, "p_daily_calc", Unit.SI),
                            sky),
                    measured(row, "soil_moisture_5_daily", Unit.SI),
                    measured(row, "soil_temp_5_daily", Unit.SI));
        }
    },

    /**
     * Global Historical Climatology Network, daily, as CSV with a column an element: rain in tenths
     * of a millimetre, temperatures in tenths of a degree C.
     */
    GLOBAL_NETWORK("DATE", "LATITUDE", "LONGITUDE") {
        @Override
        List<String> columns() {
            return List.of("DATE", "LATITUDE", "LONGITUDE", "PRCP", "TMAX", "TMIN");
        }

        @Override
        StationDay day(TableRow row) {
            return bare(
                    date(row),
                    temps(measured(row, "TMIN", Unit.TENTHS), measured(row, "TMAX", Unit.TENTHS)),
                    measured(row, "PRCP", Unit.TENTHS));
        }
    },

    /** Our own: {@code rain_mm}, {@code low_c}, {@code high_c}, or in, f and f. */
    PLAIN("day", "latitude", "longitude") {
        @Override
        List<String> columns() {
            return List.of("day", "latitude", "longitude");
        }

        @Override
        StationDay day(TableRow row) {
            return bare(
                    date(row),
                    temps(
                            either(row, "low_c", "low_f", Unit.FAHRENHEIT),
                            either(row, "high_c", "high_f", Unit.FAHRENHEIT)),
                    either(row, "rain_mm", "rain_in", Unit.INCHES));
        }
    };

    private static final double NOT_MEASURED = -99;

    private final String dayColumn;
    private final String latitude;
    private final String longitude;

    StationForm(String dayColumn, String latitude, String longitude) {
        this.dayColumn = dayColumn;
        this.latitude = latitude;
        this.longitude = longitude;
    }

    /** Columns that a file of this form must have. */
    abstract List<String> columns();

    /** A day. */
    abstract StationDay day(TableRow row);

    /**
     * The form of a table.
     *
     * @param first row of it
     * @throws BadTableException where a column is missing, or no form has such a header
     */
    static StationForm of(TableRow first) {
        Set<String> header = first.cells().keySet();
        StationForm form = Stream.of(values())
                .filter(f -> header.contains(f.dayColumn))
                .findFirst()
                .orElseThrow(() -> new BadTableException(first.file()
                        + " line 1: no column tells the day, must be lst_date (US Climate Reference"
                        + " Network), DATE (GHCN-Daily) or day"));
        form.columns().stream()
                .filter(column -> !header.contains(column))
                .findFirst()
                .ifPresent(column -> {
                    throw new BadTableException(
                            first.file() + " line 1: column " + column + " is missing");
                });
        return form;
    }

    GeoPoint place(TableRow row) {
        return new GeoPoint(row.number(latitude), row.number(longitude));
    }

    LocalDate date(TableRow row) {
        String text = row.text(dayColumn);
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException(
                    dayColumn + " is '" + text + "', must be a day, for instance 2020-07-31", e);
        }
    }

    /** How a figure is written. */
    private enum Unit {
        SI(value -> value),
        TENTHS(value -> value / 10),
        INCHES(value -> value * 25.4),
        FAHRENHEIT(value -> (value - 32) / 1.8);

        private final DoubleUnaryOperator toSi;

        Unit(DoubleUnaryOperator toSi) {
            this.toSi = toSi;
        }
    }

    private static StationDay bare(
            LocalDate day, Optional<TempRange> temps, OptionalDouble rainMm) {
        return new StationDay(
                new DailyWeather(day, temps, rainMm, DailyWeather.Sky.UNKNOWN),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    private static Optional<TempRange> temps(OptionalDouble low, OptionalDouble high) {
        return low.isPresent() && high.isPresent()
                ? Optional.of(new TempRange(low.getAsDouble(), high.getAsDouble()))
                : Optional.empty();
    }

    private static OptionalDouble either(TableRow row, String si, String other, Unit unit) {
        Map<String, String> cells = row.cells();
        if (!cells.containsKey(si) && !cells.containsKey(other)) {
            throw new BadTableException(
                    row.file() + " line 1: column " + si + " or " + other + " is missing");
        }
        return cells.containsKey(si) ? measured(row, si, Unit.SI) : measured(row, other, unit);
    }

    private static OptionalDouble measured(TableRow row, String column, Unit unit) {
        String text = row.cells().getOrDefault(column, "");
        if (text.isBlank()) {
            return OptionalDouble.empty();
        }
        double value = row.number(column);
        if (unit == Unit.TENTHS && text.contains(".")) {
            throw row.fault(
                    column,
                    "is '" + text.strip() + "'",
                    "must be a whole number of tenths (mm or C) as the archive keeps it");
        }
        return value <= NOT_MEASURED * (unit == Unit.TENTHS ? 10 : 1)
                ? OptionalDouble.empty()
                : OptionalDouble.of(unit.toSi.applyAsDouble(value));
    }
}
