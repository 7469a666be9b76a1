package rainward.weather.past;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.BitSet;
import java.util.List;
import rainward.farm.GeoPoint;
import rainward.farm.Require;
import rainward.farm.Window;
import rainward.weather.climate.Climate;
import rainward.weather.climate.DailyWeather;
import rainward.weather.climate.DayCourse;
import rainward.weather.rain.HourGrid;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainObservation;
import rainward.weather.rain.RainOrigin;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;

/**
 * The past of one place put together from all that is known of it, with what each day rests on.
 *
 * @param weather hour by hour, without gaps
 * @param days of the farm, in order
 * @param timedHours hours of which it was seen how much fell in them
 * @param warnings which days nobody observed, in words for the user
 */
public record PastWeather(
        ObservedWeather weather, List<RainDay> days, BitSet timedHours, List<String> warnings) {

    public PastWeather {
        days = List.copyOf(days);
        warnings = List.copyOf(warnings);
    }

    /**
     * One day of the farm.
     *
     * @param day calendar day, 23, 24 or 25 hours; the last one may be cut short
     * @param shares who told of how many hours, the most hours first, the better teller before the
     *     worse; never empty
     */
    public record RainDay(LocalDate day, List<RainShare> shares) {

        public RainDay {
            shares = List.copyOf(shares);
            Require.that(!shares.isEmpty(), day + " rests on nothing");
        }

        /** What fell [mm]. */
        public double rainMm() {
            return shares.stream().mapToDouble(RainShare::rainMm).sum();
        }

        /** What most of its hours rest on, the better one where two share it evenly. */
        public RainOrigin origin() {
            return shares.get(0).from().origin();
        }
    }

    /**
     * Where and when.
     *
     * @param span widened to whole hours
     * @param zone of the farm's days
     * @param place on the ground
     * @param climate of the region, for what nobody knows
     * @param seed for the hours of rain of which only a total is known
     */
    public record Frame(Window span, ZoneId zone, GeoPoint place, Climate climate, long seed) {

        public Frame {
            Require.that(!span.length().isZero(), "past of no length: " + span);
        }

        HourGrid grid() {
            return HourGrid.covering(span);
        }
    }

    /**
     * What is known; any of it may be empty.
     *
     * @param rain gauge readings and analyses, by whatever windows
     * @param days of the farm; of two for one day the first holds
     * @param air observed hours, then what had been forecast: the first that has an hour holds
     * @param forecastRain what had been forecast for hours now past, newest forecast first
     */
    public record Known(
            List<RainObservation> rain,
            List<DailyWeather> days,
            List<HourlyAir> air,
            List<RainAmount> forecastRain) {

        public Known {
            rain = List.copyOf(rain);
            days = List.copyOf(days);
            air = List.copyOf(air);
            forecastRain = List.copyOf(forecastRain);
        }
    }

    /**
     * Puts the past together. Rain by rank (gauge, hours, days, forecast, climate) and the rules of
     * {@link PastRain}; air by the first series that has the hour, else by the day
     * ({@link DayCourse}), else by the month.
     */
    public static PastWeather of(Known known, Frame frame) {
        PastRain rain = PastRain.of(known, frame);
        HourlyAir air = PastAir.of(known, frame);
        EvaporationDemand sun =
                EvaporationDemand.of(air, frame.place(), frame.climate().elevationM());
        List<RainDay> days = rain.days();
        return new PastWeather(
                new ObservedWeather(air, sun, rain.rainMm()),
                days,
                rain.timedHours(),
                rain.warnings(days));
    }
}
