package rainward.feed.hourly;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.farm.GeoPoint;
import rainward.feed.reading.Notes;
import rainward.feed.reading.Spell;
import rainward.feed.terms.Service;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.ForecastSeries.Stamp;

/**
 * A forecast as read from an answer, not yet cut to the present.
 *
 * @param issuedAt when the service issued it
 * @param air layers of air, wind and sky; temperature is there
 * @param rain amounts and chances
 * @param notes what was missing or left out
 */
public record ReadForecast(Instant issuedAt, AirLayers air, RainLayers rain, List<String> notes) {

    public ReadForecast {
        notes = List.copyOf(notes);
    }

    /** Where a series holds, and whose it is. */
    public record Place(Service service, GeoPoint point, Instant asOf) {}

    /** The series from the present on; empty where it does not cover the coming hours. */
    public Optional<ForecastSeries> series(Place place, Instant pulledAt, List<String> before) {
        Notes more = new Notes();
        return new HourlyFill(air, more).from(place.asOf()).map(hours -> {
            var outlook = rain.from(hours.start(), more);
            List<String> warnings = new ArrayList<>(before);
            warnings.addAll(notes);
            warnings.addAll(more.all());
            return new ForecastSeries(
                    new Stamp(place.service().code(), issuedAt, pulledAt),
                    place.point(),
                    hours,
                    outlook,
                    warnings);
        });
    }

    /** First instant after its temperatures. */
    public Instant end() {
        List<Spell> temps = air.airTempC();
        return temps.get(temps.size() - 1).window().to();
    }
}
