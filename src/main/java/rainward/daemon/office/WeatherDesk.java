package rainward.daemon.office;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import rainward.daemon.settings.Settings;
import rainward.farm.DayClock;
import rainward.farm.Property;
import rainward.feed.SourceChain;
import rainward.feed.SourceWatch;
import rainward.feed.nws.NationalWeatherService;
import rainward.feed.point.MetNorway;
import rainward.feed.point.OpenMeteo;
import rainward.feed.terms.Pacing;
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
    private final Map<Settings.Source, ForecastSource> services =
            new EnumMap<>(Settings.Source.class);
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
        PoliteClient client = FeedDoor.client(office, pacing);
        for (Settings.Source source : Settings.Source.values()) {
            services.put(source, source(source, client));
        }
        this.observed = new ObservedDesk(office, client, watch);
        this.alerts = new AlertDesk(office, client, watch);
        this.ensembles = new EnsembleDesk(office, client);
        office.store()
                .read(books -> books.lastKnown().find(SOURCES, KnownSources.class))
                .ifPresent(known -> watch.resume(known.states()));
    }

    /** Sources of one property in its order, all of them watched together. */
    private Pull pull(Property property, Instant now) {
        List<ForecastSource> order =
                office.settings().weather().sources().of(property.name()).stream()
                        .map(source -> Objects.requireNonNull(services.get(source)))
                        .toList();
        return LocalWords.in(
                office.dayClock(), new SourceChain(order, watch).pull(property.place(), now));
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

    /**
     * What one property's pull gave.
     *
     * @param property its name
     * @param pull as it went
     */
    public record PropertyPull(String property, Pull pull) {}

    /** Asks what fell, as far as it is due, lays it down and learns from it. */
    public void pullObserved() {
        observed.pullAll();
        new SkillDesk(office).learn();
        keepStates();
    }

    /** Asks for public alerts; those that nobody has been told of. */
    public List<AlertDesk.Turned> pullAlerts() {
        List<AlertDesk.Turned> fresh = alerts.pullAll();
        keepStates();
        return fresh;
    }

    private void keepStates() {
        office.store().inTransaction(books -> {
            books.lastKnown().put(SOURCES, office.now(), new KnownSources(watch.all()));
            return SOURCES;
        });
    }

    /** Asks for the forecast of one property, as a try: the records stay as they are. */
    Optional<PropertyPull> tryOne() {
        return office.roster().properties().values().stream()
                .findFirst()
                .map(property -> new PropertyPull(property.name(), pull(property, office.now())));
    }

    /** Asks for forecast and ensemble of every property and lays down what came. */
    public List<PropertyPull> pullAll() {
        Instant now = office.now();
        List<PropertyPull> pulls = new ArrayList<>();
        for (Property property : office.roster().properties().values()) {
            pulls.add(new PropertyPull(property.name(), pull(property, now)));
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
        SkillDesk.layDown(books, pulled.property(), pulled.pull().outcome());
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
    public static Optional<ForecastSeries> forecast(Books books, String property) {
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

    /** The forecast that each property has, by name; one without is missing. */
    public Map<String, ForecastSeries> inHand() {
        return office.store().read(WeatherDesk::inHand);
    }

    static Map<String, ForecastSeries> inHand(Books books) {
        Map<String, ForecastSeries> hand = new TreeMap<>();
        for (Property property : books.fields().properties()) {
            forecast(books, property.name()).ifPresent(series -> hand.put(property.name(), series));
        }
        return hand;
    }

    /** What the person should know about the forecasts in hand, as of the last pull. */
    public List<String> words() {
        return office.store()
                .read(books -> words(books, inHand(books).values(), office.dayClock()));
    }

    /** Which sources do not do well and since when, then what the forecasts in hand lack. */
    static List<String> words(Books books, Collection<ForecastSeries> inHand, DayClock clock) {
        List<String> words = new ArrayList<>();
        List<SourceStatus> states = books.lastKnown()
                .find(SOURCES, KnownSources.class)
                .map(KnownSources::states)
                .orElse(List.of());
        states.stream()
                .filter(status -> status.state() != SourceStatus.State.OK)
                .forEach(status -> words.add(LocalWords.of(status, clock)));
        for (ForecastSeries series : inHand) {
            series.warnings().stream()
                    // The sentence about its source says this with the time since when.
                    .filter(warning -> words.stream().noneMatch(said -> said.endsWith(warning)))
                    .forEach(words::add);
        }
        return words;
    }
}
