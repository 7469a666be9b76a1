package rainward.feed.recorded;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import okhttp3.HttpUrl;
import rainward.farm.GeoPoint;
import rainward.feed.hourly.ReadForecast;
import rainward.feed.nws.GridForecast;
import rainward.feed.point.ColumnForecast;
import rainward.feed.point.MetForecast;
import rainward.feed.reading.Unreadable;
import rainward.feed.terms.Addresses;
import rainward.feed.terms.Service;
import rainward.feed.wire.PoliteClient;
import rainward.feed.wire.Round;
import rainward.feed.wire.Sha256;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.LastGoodCopies.Copy;
import rainward.weather.source.LastGoodCopies.Times;
import rainward.weather.source.RawPull;

/** Forecasts out of answers that were kept; nobody is asked. */
public final class ArchivedForecasts {

    private ArchivedForecasts() {}

    /** A kept forecast: what it says of a place, as of when it came. */
    @FunctionalInterface
    public interface Forecast {

        /** Empty where it speaks of another place. */
        Optional<ForecastSeries> at(GeoPoint place);

        /** An answer that is no forecast, or cannot be read. */
        Forecast NONE = place -> Optional.empty();
    }

    /** Reads a kept answer. */
    public static Forecast of(RawPull pull) {
        Copy copy = new Copy(
                pull.address(),
                pull.headers(),
                pull.body(),
                Sha256.of(pull.body()),
                new Times(pull.fetchedAt(), pull.fetchedAt()));
        try {
            if (pull.source().equals(Service.NWS.code())) {
                return pull.address().contains("/gridpoints/") ? ofCell(copy) : Forecast.NONE;
            }
            if (pull.source().equals(Service.MET_NORWAY.code())) {
                return ofPoint(copy, Service.MET_NORWAY, MetForecast::read);
            }
            return pull.source().equals(Service.OPEN_METEO.code())
                    ? ofPoint(copy, Service.OPEN_METEO, ColumnForecast::read)
                    : Forecast.NONE;
        } catch (Unreadable e) {
            return Forecast.NONE;
        }
    }

    /** A cell's answer holds its corners: it speaks of every place inside. */
    private static Forecast ofCell(Copy copy) throws Unreadable {
        GridForecast grid = GridForecast.read(copy);
        Instant came = copy.times().fetchedAt();
        return place ->
                grid.holds(place) ? grid.series(place, new Round(came), came) : Optional.empty();
    }

    /** A point's answer speaks of the place in the question. */
    private static Forecast ofPoint(
            Copy copy, Service service, PoliteClient.Reader<ReadForecast> reader)
            throws Unreadable {
        ReadForecast forecast = reader.read(copy);
        HttpUrl url = HttpUrl.get(copy.address());
        Instant came = copy.times().fetchedAt();
        return place -> {
            GeoPoint shared = Addresses.shared(place);
            boolean here = asked(url, "lat", "latitude").equals(digits(shared.latitudeDeg()))
                    && asked(url, "lon", "longitude").equals(digits(shared.longitudeDeg()));
            return here
                    ? forecast.series(
                            new ReadForecast.Place(service, shared, came), came, List.of())
                    : Optional.empty();
        };
    }

    private static String asked(HttpUrl url, String name, String otherName) {
        return Optional.ofNullable(url.queryParameter(name))
                .or(() -> Optional.ofNullable(url.queryParameter(otherName)))
                .orElse("");
    }

    private static String digits(double degrees) {
        return Addresses.degrees(degrees, 4);
    }
}
