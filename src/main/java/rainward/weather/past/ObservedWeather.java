package rainward.weather.past;

import rainward.farm.Require;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;

/**
 * What the weather did at one place, by the hour, the soil's past.
 *
 * @param air air, wind and sky
 * @param sun radiation and evaporation demand
 * @param rainMm rain in each hour [mm]
 */
public record ObservedWeather(HourlyAir air, EvaporationDemand sun, double[] rainMm) {

    public ObservedWeather {
        Require.that(rainMm.length == air.hours(), "rain hours differ from air hours");
        Require.eachInRange("rainMm", rainMm, 0, 400);
    }
}
