package rainward.feed.point;

import java.net.URI;
import java.time.Instant;
import java.util.Optional;
import okhttp3.HttpUrl;
import rainward.farm.GeoPoint;
import rainward.feed.hourly.ReadForecast;
import rainward.feed.terms.Addresses;
import rainward.feed.terms.FeedSettings;
import rainward.feed.terms.Service;
import rainward.feed.wire.Answer;
import rainward.feed.wire.Answer.Given;
import rainward.feed.wire.Answer.Refused;
import rainward.feed.wire.Ask;
import rainward.feed.wire.PoliteClient;
import rainward.feed.wire.Round;
import rainward.weather.source.EnsemblePull;
import rainward.weather.source.EnsembleRain;
import rainward.weather.source.Pull;
import rainward.weather.source.PullOutcome.Failed;
import rainward.weather.source.PullOutcome.Kind;

/**
 * Open-Meteo, opt-in only: its free tier is for non-commercial use. It alone shows the members of
 * ensembles.
 */
public final class OpenMeteo extends PlainSource {

    private static final String HOURLY =
            "temperature_2m,dew_point_2m,relative_humidity_2m,wind_speed_10m,cloud_cover,"
                    + "precipitation,precipitation_probability";
    private static final URI PAID = URI.create("https://customer-api.open-meteo.com");
    private static final URI PAID_ENSEMBLE =
            URI.create("https://customer-ensemble-api.open-meteo.com");

    public OpenMeteo(PoliteClient client) {
        super(client, Service.OPEN_METEO);
    }

    @Override
    public Pull pull(GeoPoint point, Instant asOf) {
        if (client().settings().openMeteo().isEmpty()) {
            return new Pull(
                    new Failed(
                            Kind.DISABLED,
                            "open-meteo is switched off: its free tier is for non-commercial use;"
                                    + " give a key, or say in the settings that your use is",
                            Optional.empty(),
                            Optional.empty()),
                    java.util.List.of());
        }
        return super.pull(point, asOf);
    }

    @Override
    Ask ask(GeoPoint shared) {
        HttpUrl.Builder url = common(base(Service.OPEN_METEO, PAID), "v1/forecast", shared)
                .addQueryParameter("hourly", HOURLY)
                .addQueryParameter("forecast_days", "10")
                .addQueryParameter("temperature_unit", "celsius")
                .addQueryParameter("wind_speed_unit", "ms");
        return Ask.get(Service.OPEN_METEO, url.build(), "application/json");
    }

    @Override
    PoliteClient.Reader<ReadForecast> reader() {
        return ColumnForecast::read;
    }

    /** Members of the chosen ensemble with every answer as received. */
    public EnsemblePull members(GeoPoint point, Instant asOf) {
        Optional<String> model =
                client().settings().openMeteo().flatMap(FeedSettings.OpenMeteoTerms::ensembleModel);
        return model.map(m -> members(m, point, asOf)).orElse(EnsemblePull.NONE);
    }

    private EnsemblePull members(String model, GeoPoint point, Instant asOf) {
        GeoPoint shared = Addresses.shared(point);
        HttpUrl url = common(
                        base(Service.OPEN_METEO_ENSEMBLE, PAID_ENSEMBLE), "v1/ensemble", shared)
                .addQueryParameter("hourly", "precipitation")
                .addQueryParameter("models", model)
                .addQueryParameter("forecast_days", "10")
                .build();
        Ask ask = Ask.get(Service.OPEN_METEO_ENSEMBLE, url, "application/json");
        Round round = new Round(asOf);
        Answer<EnsembleRain> answer =
                client().ask(ask, round, copy -> EnsembleColumns.read(copy, shared));
        if (answer instanceof Given<EnsembleRain> given) {
            client().keep(given);
            return new EnsemblePull(Optional.of(given.value()), round.answers());
        }
        return new EnsemblePull(
                ((Refused<EnsembleRain>) answer).kept().map(Given::value), round.answers());
    }

    private HttpUrl.Builder common(URI base, String path, GeoPoint shared) {
        HttpUrl.Builder url = Addresses.under(base, path)
                .addQueryParameter("latitude", Addresses.degrees(shared.latitudeDeg(), 4))
                .addQueryParameter("longitude", Addresses.degrees(shared.longitudeDeg(), 4))
                .addQueryParameter("timeformat", "unixtime")
                .addQueryParameter("timezone", "GMT")
                .addQueryParameter("precipitation_unit", "mm");
        key().ifPresent(k -> url.addQueryParameter("apikey", k));
        return url;
    }

    private URI base(Service service, URI paid) {
        boolean own = client().settings().addresses().containsKey(service);
        return key().isPresent() && !own ? paid : client().settings().address(service);
    }

    private Optional<String> key() {
        return client().settings().openMeteo().flatMap(FeedSettings.OpenMeteoTerms::key);
    }
}
