package rainward.daemon.office;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rainward.farm.Property;
import rainward.feed.point.OpenMeteo;
import rainward.feed.wire.PoliteClient;
import rainward.store.Books;
import rainward.weather.source.EnsemblePull;
import rainward.weather.source.EnsembleRain;
import rainward.weather.source.WeightedEnsemble;

/** Where members of an ensemble are asked for, where the settings name one, and laid down. */
final class EnsembleDesk {

    /** Members older than that are of runs that two later ones have replaced; chosen. */
    private static final Duration OF_USE = Duration.ofHours(24);

    /** The one ensemble there is has no other to be weighed against. */
    private static final double ONLY_ONE = 1;

    private final Office office;
    private final OpenMeteo source;

    EnsembleDesk(Office office, PoliteClient client) {
        this.office = office;
        this.source = new OpenMeteo(client);
    }

    /** Asks for every property. */
    void pullAll() {
        Instant now = office.now();
        Map<String, EnsemblePull> pulls = new TreeMap<>();
        for (Property property : office.roster().properties().values()) {
            pulls.put(property.name(), source.members(property.place(), now));
        }
        office.store().inTransaction(books -> {
            pulls.forEach((property, pull) -> layDown(books, property, pull));
            return pulls.size();
        });
    }

    private static void layDown(Books books, String property, EnsemblePull pull) {
        pull.answers().forEach(books.forecasts()::add);
        pull.rain()
                .ifPresent(rain ->
                        books.lastKnown().put(membersOf(property), rain.stamp().pulledAt(), rain));
    }

    /** Members to reckon a property's rain with, as of a moment; empty where none are of use. */
    static List<WeightedEnsemble> ensembles(Books books, Property property, Instant now) {
        Optional<EnsembleRain> known =
                books.lastKnown().find(membersOf(property.name()), EnsembleRain.class);
        return known
                .filter(rain -> rain.stamp().issuedAt().plus(OF_USE).isAfter(now))
                .map(rain -> new WeightedEnsemble(rain, ONLY_ONE))
                .stream()
                .toList();
    }

    private static String membersOf(String property) {
        return "members/" + property;
    }
}
