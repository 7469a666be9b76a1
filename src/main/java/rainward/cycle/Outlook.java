package rainward.cycle;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.farm.FieldCase;
import rainward.queue.problem.Plan;
import rainward.readiness.Readiness;
import rainward.stand.StandOutlook;
import rainward.weather.past.PastWeather;
import rainward.weather.source.ForecastSeries;
import rainward.window.StormWindow;

/**
 * All that one round of reckoning says: what the brief, the commands and the board show.
 *
 * @param asOf the moment it holds for
 * @param forecasts by property, where there is one
 * @param fields every field, by name
 * @param rain ahead by property
 * @param fallen by property, day by day
 * @param plan the order
 * @param windows open now
 */
public record Outlook(
        Instant asOf,
        Map<String, ForecastSeries.Stamp> forecasts,
        List<FieldOutlook> fields,
        Map<String, RainPicture> rain,
        Map<String, List<PastWeather.RainDay>> fallen,
        Plan plan,
        List<StormWindow> windows) {

    public Outlook {
        forecasts = Map.copyOf(forecasts);
        fields = List.copyOf(fields);
        rain = Map.copyOf(rain);
        fallen = Map.copyOf(fallen);
        windows = List.copyOf(windows);
    }

    /** What is said of a field, if it is known. */
    public Optional<FieldOutlook> field(String name) {
        return fields.stream().filter(f -> f.item().field().name().equals(name)).findFirst();
    }

    /**
     * One field.
     *
     * @param item as it lies and stands
     * @param readiness score, gates and reason
     * @param stands chance by seeding hour, a list entry a mix in season; empty without forecast
     * @param seedbed how the ground is now, if it was reckoned
     */
    public record FieldOutlook(
            FieldCase item,
            Readiness readiness,
            List<StandOutlook> stands,
            Optional<Seedbed> seedbed) {

        public FieldOutlook {
            stands = List.copyOf(stands);
        }
    }

    /**
     * The ground now.
     *
     * @param waterFraction at seed depth, middle of the traces [m3/m3]
     * @param tempC at seed depth [C]
     * @param wetness in words
     * @param workableFrom first hour in which at least the chosen share of traces is workable
     */
    public record Seedbed(
            double waterFraction, double tempC, Wetness wetness, Optional<Instant> workableFrom) {

        /** Moisture at seed depth in words. */
        public enum Wetness {
            DUST_DRY,
            DRY,
            MOIST,
            WET,
            SOAKED
        }
    }
}
