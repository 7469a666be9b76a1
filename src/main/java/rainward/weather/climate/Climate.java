package rainward.weather.climate;

import java.time.Instant;
import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneOffset;
import java.util.List;
import rainward.farm.GeoPoint;
import rainward.farm.Require;

/**
 * The usual weather of a region, for hours that nothing else speaks of.
 *
 * @param region its name in {@code shared/climate.csv}
 * @param elevationM its height above the sea [m]
 * @param months January to December
 */
public record Climate(String region, double elevationM, List<MonthlyClimate> months) {

    public Climate {
        Require.named("region", region);
        Require.inRange("elevationM", elevationM, -430, 6000);
        months = List.copyOf(months);
        Require.that(months.size() == 12, region + ": " + months.size() + " months, must be 12");
        for (Month month : Month.values()) {
            Require.that(
                    months.get(month.getValue() - 1).month() == month,
                    region + ": row " + month.getValue() + " is not " + month);
        }
    }

    /** The month that a day lies in. */
    public MonthlyClimate on(LocalDate day) {
        return months.get(day.getMonthValue() - 1);
    }

    /** The month by mean solar time at a place. */
    public MonthlyClimate at(Instant instant, GeoPoint place) {
        long shiftS = Math.round(place.longitudeDeg() * 240);
        return on(instant.plusSeconds(shiftS).atOffset(ZoneOffset.UTC).toLocalDate());
    }
}
