package rainward.soil.verify;

import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import rainward.farm.Window;
import rainward.weather.climate.Climate;
import rainward.weather.climate.DailyWeather;
import rainward.weather.climate.MonthlyClimate;
import rainward.weather.climate.TempRange;
import rainward.weather.past.ObservedWeather;
import rainward.weather.past.PastWeather;

/**
 * The hours of a station's days, in its own standard time: air and sun as for any past of the
 * service, rain by {@link StormDay}. Days without a temperature take the mean of their month at
 * this station, days without rain none.
 */
public final class StationWeather {

    /** Height above the sea where the file tells none; 300 m move evaporation by 1 % [m]. */
    private static final double UNKNOWN_ELEVATION_M = 200;

    private StationWeather() {}

    /** All days of a station by the hour. */
    public static ObservedWeather of(StationYear year) {
        ZoneOffset zone = ZoneOffset.ofHours((int) Math.round(year.place().longitudeDeg() / 15));
        List<DailyWeather> days = year.days().stream().map(StationDay::weather).toList();
        LocalDate first = days.get(0).day();
        LocalDate end = days.get(days.size() - 1).day().plusDays(1);
        Window span = new Window(
                first.atStartOfDay().toInstant(zone), end.atStartOfDay().toInstant(zone));
        ObservedWeather air = PastWeather.of(
                        new PastWeather.Known(List.of(), days, List.of(), List.of()),
                        new PastWeather.Frame(span, zone, year.place(), climate(days), 1))
                .weather();
        return new ObservedWeather(air.air(), air.sun(), rain(days));
    }

    private static double[] rain(List<DailyWeather> days) {
        double[] rain = new double[24 * days.size()];
        for (int h = 0; h < rain.length; h++) {
            rain[h] = StormDay.hourMm(days.get(h / 24).rainMm().orElse(0), h % 24);
        }
        return rain;
    }

    private static Climate climate(List<DailyWeather> days) {
        List<MonthlyClimate> months = new ArrayList<>();
        for (Month month : Month.values()) {
            double low = mean(days, month, TempRange::airTempMinC);
            double high = mean(days, month, TempRange::airTempMaxC);
            months.add(new MonthlyClimate(month, 0.3, 8, low, high));
        }
        return new Climate("this station", UNKNOWN_ELEVATION_M, months);
    }

    /** Mean of a month, of the year where the month has no day. */
    private static double mean(
            List<DailyWeather> days, Month month, ToDoubleFunction<TempRange> what) {
        double year = days.stream()
                .flatMap(day -> day.temps().stream())
                .mapToDouble(what)
                .average()
                .orElse(10);
        return days.stream()
                .filter(day -> day.day().getMonth() == month)
                .flatMap(day -> day.temps().stream())
                .mapToDouble(what)
                .average()
                .orElse(year);
    }
}
