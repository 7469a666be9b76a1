package rainward.weather.past;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import rainward.weather.climate.DailyWeather;
import rainward.weather.climate.DayCourse;
import rainward.weather.past.PastWeather.Frame;
import rainward.weather.past.PastWeather.Known;
import rainward.weather.rain.HourGrid;
import rainward.weather.sky.HourlyAir;

/** Air of the past: the first hourly series that has the hour, else the day, else the month. */
final class PastAir {

    private PastAir() {}

    static HourlyAir of(Known known, Frame frame) {
        HourGrid grid = frame.grid();
        HourlyAir air = byDay(known.days(), frame).over(grid.start(), grid.hours());
        for (int i = known.air().size() - 1; i >= 0; i--) {
            lay(known.air().get(i), air);
        }
        return air;
    }

    private static DayCourse byDay(List<DailyWeather> days, Frame frame) {
        Map<LocalDate, DailyWeather> known = days.stream()
                .collect(Collectors.toMap(DailyWeather::day, Function.identity(), (a, b) -> a));
        return new DayCourse(
                frame.zone(),
                new DayCourse.Site(frame.place(), frame.climate()),
                day -> known.getOrDefault(day, DailyWeather.unknown(day)));
    }

    private static void lay(HourlyAir over, HourlyAir air) {
        int shift = (int) Duration.between(air.start(), over.start()).toHours();
        int from = Math.max(0, shift);
        int length = Math.min(air.hours(), shift + over.hours()) - from;
        if (length > 0) {
            int first = from - shift;
            System.arraycopy(over.airTempC(), first, air.airTempC(), from, length);
            System.arraycopy(over.dewPointC(), first, air.dewPointC(), from, length);
            System.arraycopy(over.windMps(), first, air.windMps(), from, length);
            System.arraycopy(over.skyCoverFraction(), first, air.skyCoverFraction(), from, length);
        }
    }
}
