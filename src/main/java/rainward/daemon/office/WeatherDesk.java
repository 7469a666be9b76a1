package rainward.daemon.office;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.brief.LocalAlert;
import rainward.daemon.settings.Settings;
import rainward.farm.Property;
import rainward.feed.SourceChain;
import rainward.feed.SourceWatch;
import rainward.feed.nws.NationalWeatherService;
import rainward.feed.point.MetNorway;
import rainward.feed.point.OpenMeteo;
import rainward.feed.terms.FeedSettings;
import rainward.feed.terms.Pacing;
import rainward.feed.terms.Service;
import rainward.feed.wire.PoliteClient;
import rainward.store.Books;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.ForecastSource;
import rainward.weather.source.Pull;
import rainward.weather.source.SourceStatus;

/** Where forecasts are asked for and laid down. */
public final class WeatherDesk {

    private static final String SOURCES = "sources";

    private final Office office;
    private final ForecastSource chain;
    private final ObservedDesk observed;
    private final AlertDesk alerts;
    private final EnsembleDesk ensembles;
    private final SourceWatch watch = new SourceWatch();

    /** A desk that waits between tries as the services ask. */
    public WeatherDesk(Office office) {
        this(office, Pacing.real(office.home().path().toString().hashCode()));
    }

    /** A desk with its own way of waiting, for a clock that runs faster. */
    public WeatherDesk(Office office, Pacing pacing) {
        this.office = office;
        PoliteClient client = new PoliteClient(
                feedSettings(office.settings().weather()),
                office.store().copies(),
                office.store().pauses(),
                pacing);
        List<ForecastSource> order = office.settings().weather().sources().stream()
                .map(source -> source(source, client))
                .toList();
        this.chain = new SourceChain(order, watch);
        this.observed = new ObservedDesk(office, client);
        this.alerts = new AlertDesk(office, client);
        this.ensembles = new EnsembleDesk(office, client);
        office.store()
                .read(books -> books.lastKnown().find(SOURCES, KnownSources.class))
                .ifPresent(known -> watch.resume(known.states()));
    }

    /** States of the sources, as they are kept. */
    record KnownSources(List<SourceStatus> states) {}

    private static ForecastSource source(Settings.Source source, PoliteClient client) {
        return switch (source) {
            case NWS -> new NationalWeatherService(client);
            case MET_NORWAY -> new MetNorway(client);
            case OPEN_METEO -> new OpenMeteo(client);
        };
    }

    static FeedSettings feedSettings(Settings.Weather weather) {
        String version = Optional.ofNullable(
                        WeatherDesk.class.getPackage().getImplementationVersion())
                .orElse("dev");
        Settings.Pace pace = weather.pace();
        FeedSettings feed = new FeedSettings(
                new FeedSettings.Identity("rainward/" + version, weather.contact()),
                Map.of(),
                new FeedSettings.Pace(
                        pace.connect(),
                        pace.answer(),
                        pace.call(),
                        pace.inFlight(),
                        pace.tries(),
                        true),
                weather.openMeteo()
                        .map(terms -> new FeedSettings.OpenMeteoTerms(
                                terms.key().map(key -> key.reveal()), terms.ensemble())));
        for (var address : weather.addresses().entrySet()) {
            feed = feed.at(service(address.getKey()), address.getValue());
            if (address.getKey() == Settings.Server.OPEN_METEO) {
                // One relay answers both: the ensemble has a path of its own.
                feed = feed.at(Service.OPEN_METEO_ENSEMBLE, address.getValue());
            }
        }
        return feed;
    }

    private static Service service(Settings.Server server) {
        return switch (server) {
            case NWS -> Service.NWS;
            case MET_NORWAY -> Service.MET_NORWAY;
            case OPEN_METEO -> Service.OPEN_METEO;
            case STAGE4 -> Service.STAGE4;
            case ACIS -> Service.ACIS;
        };
    }

    /**
     * What one property's pull gave.
     *
     * @param property its name
     * @param pull as it went
     */
    public record PropertyPull(String property, Pull pull) {}

    /** Asks what fell, as far as it is due, and lays it down. */
    public void pullObserved() {
        observed.pullAll();
    }

    /** Asks for public alerts; those that nobody has been told of. */
    public List<LocalAlert> pullAlerts() {
        return alerts.pullAll();
    }

    /** Asks for the forecast of one property, as a try: the records stay as they are. */
    Optional<PropertyPull> tryOne() {
        return office.roster().properties().values().stream()
                .findFirst()
                .map(property -> new PropertyPull(
                        property.name(), chain.pull(property.place(), office.now())));
    }

    /** Asks for forecast and ensemble of every property and lays down what came. */
    public List<PropertyPull> pullAll() {
        Instant now = office.now();
        List<PropertyPull> pulls = new ArrayList<>();
        for (Property property : office.roster().properties().values()) {
            pulls.add(new PropertyPull(property.name(), chain.pull(property.place(), now)));
        }
        office.store().inTransaction(books -> {
            pulls.forEach(pull -> layDown(books, pull, now));
            books.lastKnown().put(SOURCES, now, new KnownSources(watch.all()));
            return pulls.size();
        });
        ensembles.pullAll();
        return pulls;
    }

    private static void layDown(Books books, PropertyPull pulled, Instant now) {
        pulled.pull().answers().forEach(books.forecasts()::add);
        pulled.pull().outcome().series().ifPresent(series -> {
            Optional<ForecastSeries> before = forecast(books, pulled.property());
            before.ifPresent(old -> keepElapsed(books, pulled.property(), old, now));
            books.lastKnown().put(forecastOf(pulled.property()), now, series);
        });
    }

    private static void keepElapsed(Books books, String property, ForecastSeries old, Instant now) {
        ElapsedWeather more = ElapsedWeather.of(old, now);
        ElapsedWeather all =
                elapsed(books, property).map(known -> known.then(more)).orElse(more);
        books.lastKnown().put(elapsedOf(property), now, all);
    }

    /** The newest forecast of a property, if one ever came. */
    static Optional<ForecastSeries> forecast(Books books, String property) {
        return books.lastKnown().find(forecastOf(property), ForecastSeries.class);
    }

    /** What had been forecast for a property's past hours. */
    static Optional<ElapsedWeather> elapsed(Books books, String property) {
        return books.lastKnown().find(elapsedOf(property), ElapsedWeather.class);
    }

    private static String forecastOf(String property) {
        return "forecast/" + property;
    }

    private static String elapsedOf(String property) {
        return "elapsed/" + property;
    }

    /** How each source does. */
    public List<SourceStatus> sources() {
        return watch.all();
    }
}
