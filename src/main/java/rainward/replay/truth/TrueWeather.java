package rainward.replay.truth;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.TreeMap;
import rainward.farm.GeoPoint;
import rainward.farm.Property;
import rainward.soil.verify.StationDay;
import rainward.soil.verify.StationWeather;
import rainward.soil.verify.StationYear;
import rainward.weather.climate.DailyWeather;
import rainward.weather.past.ObservedWeather;

/**
 * What the weather did at each property in one season: a station's days at the yard, its rain
 * carried to the properties so that it is alike nearby and less so far off, and spread to hours by
 * the rule of {@link StationWeather} with the burst moved to an hour of its own each day.
 *
 * @param byProperty hour by hour
 * @param year the days at the yard
 */
public record TrueWeather(Map<String, ObservedWeather> byProperty, StationYear year) {

    /** Distance at which daily rain is alike by 1/e; 50 to 100 km, from memory [km]. */
    private static final double ALIKE_KM = 75;

    public TrueWeather {
        byProperty = Map.copyOf(byProperty);
    }

    /**
     * Carries a station's weather to properties.
     *
     * @param year days around the season
     * @param properties near the station
     * @param seed of what the days do not tell
     */
    public static TrueWeather of(StationYear year, List<Property> properties, long seed) {
        RainClimate climate = RainClimate.of(year.days().stream()
                .mapToDouble(day -> day.weather().rainMm().orElse(0))
                .toArray());
        double[] latent = latent(year, climate, seed);
        Map<String, ObservedWeather> weather = new TreeMap<>();
        for (Property property : properties) {
            weather.put(property.name(), at(property, year, climate, latent, seed));
        }
        return new TrueWeather(weather, year);
    }

    private static double[] latent(StationYear year, RainClimate climate, long seed) {
        double[] latent = new double[year.days().size()];
        for (int d = 0; d < latent.length; d++) {
            DailyWeather day = year.days().get(d).weather();
            double dry = random(seed, day.day(), "dry").nextDouble();
            latent[d] = climate.latent(day.rainMm().orElse(0), dry);
        }
        return latent;
    }

    private static ObservedWeather at(
            Property property, StationYear year, RainClimate climate, double[] latent, long seed) {
        double alike = Math.exp(-year.place().distanceKm(property.place()) / ALIKE_KM);
        List<StationDay> days = new ArrayList<>();
        for (int d = 0; d < latent.length; d++) {
            DailyWeather day = year.days().get(d).weather();
            double own = random(seed, day.day(), property.name()).nextGaussian();
            double there = alike * latent[d] + Math.sqrt(1 - alike * alike) * own;
            days.add(new StationDay(
                    new DailyWeather(
                            day.day(),
                            day.temps(),
                            OptionalDouble.of(climate.amountMm(there)),
                            day.sky()),
                    OptionalDouble.empty(),
                    OptionalDouble.empty()));
        }
        GeoPoint place = property.place();
        return moved(StationWeather.of(new StationYear(property.name(), place, days)), year, seed);
    }

    /** Each day's rain turned round within the day by a number of hours of its own. */
    private static ObservedWeather moved(ObservedWeather weather, StationYear year, long seed) {
        double[] rain = weather.rainMm().clone();
        for (int d = 0; d < rain.length / 24; d++) {
            LocalDate day = year.days().get(d).weather().day();
            int hours = random(seed, day, "burst").nextInt(24);
            for (int h = 0; h < 24; h++) {
                rain[24 * d + (h + hours) % 24] = weather.rainMm()[24 * d + h];
            }
        }
        return new ObservedWeather(weather.air(), weather.sun(), rain);
    }

    static SplittableRandom random(long seed, LocalDate day, String what) {
        return new SplittableRandom(31 * (31 * seed + day.toEpochDay()) + what.hashCode());
    }

    /** Rain at a property within hours from an instant on [mm]. */
    public double rainMm(String property, Instant from, int hours) {
        ObservedWeather weather = at(property);
        int first = (int) Duration.between(weather.air().start(), from).toHours();
        double sum = 0;
        for (int h = Math.max(0, first);
                h < Math.min(first + hours, weather.air().hours());
                h++) {
            sum += weather.rainMm()[h];
        }
        return sum;
    }

    public ObservedWeather at(String property) {
        ObservedWeather weather = byProperty.get(property);
        if (weather == null) {
            throw new IllegalArgumentException("no weather of " + property);
        }
        return weather;
    }
}
