package rainward.soil.verify;

import java.util.OptionalDouble;
import rainward.farm.Require;
import rainward.weather.climate.DailyWeather;

/**
 * A day at a station.
 *
 * @param weather of the day
 * @param moisture5Fraction mean volumetric water content at 5 cm, if measured [m3/m3]
 * @param soilTemp5C mean soil temperature at 5 cm, if measured [C]
 */
public record StationDay(
        DailyWeather weather, OptionalDouble moisture5Fraction, OptionalDouble soilTemp5C) {

    public StationDay {
        moisture5Fraction.ifPresent(m -> Require.inRange("moisture5Fraction", m, 0, 1));
        soilTemp5C.ifPresent(t -> Require.inRange("soilTemp5C", t, -60, 80));
    }
}
