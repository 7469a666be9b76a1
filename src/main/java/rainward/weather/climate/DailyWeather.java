package rainward.weather.climate;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.farm.Require;

/**
 * One calendar day of the farm's zone, as a daily analysis or a station gives it; what it does not
 * give is empty.
 *
 * @param day of the farm
 * @param temps lowest and highest air temperature
 * @param rainMm rain from midnight to midnight [mm]
 * @param sky sun, humidity and wind
 */
public record DailyWeather(
        LocalDate day, Optional<TempRange> temps, OptionalDouble rainMm, Sky sky) {

    public DailyWeather {
        rainMm.ifPresent(mm -> Require.inRange(day + " rainMm", mm, 0, 1000));
    }

    /** A day of which temperatures and rain are known. */
    public static DailyWeather of(LocalDate day, TempRange temps, double rainMm) {
        return new DailyWeather(day, Optional.of(temps), OptionalDouble.of(rainMm), Sky.UNKNOWN);
    }

    /** A day of which nothing is known. */
    public static DailyWeather unknown(LocalDate day) {
        return new DailyWeather(day, Optional.empty(), OptionalDouble.empty(), Sky.UNKNOWN);
    }

    /**
     * The rest of a day.
     *
     * @param radiationMjPerM2 global radiation of the day [MJ/m2]
     * @param humidityFraction mean relative humidity, 0 to 1
     * @param windMps mean at 2 m [m/s]
     */
    public record Sky(
            OptionalDouble radiationMjPerM2,
            OptionalDouble humidityFraction,
            OptionalDouble windMps) {

        /** Nothing known. */
        public static final Sky UNKNOWN =
                new Sky(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

        public Sky {
            radiationMjPerM2.ifPresent(mj -> Require.inRange("radiationMjPerM2", mj, 0, 50));
            humidityFraction.ifPresent(rh -> Require.inRange("humidityFraction", rh, 0, 1));
            windMps.ifPresent(mps -> Require.inRange("windMps", mps, 0, 60));
        }
    }
}
