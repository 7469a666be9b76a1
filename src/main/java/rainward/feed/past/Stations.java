package rainward.feed.past;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import rainward.farm.GeoPoint;
import rainward.feed.nws.GridCell;
import rainward.feed.reading.Features;
import rainward.feed.reading.Features.One;
import rainward.feed.terms.Addresses;
import rainward.feed.terms.Service;
import rainward.feed.wire.Answer;
import rainward.feed.wire.Answer.Given;
import rainward.feed.wire.Answer.Refused;
import rainward.feed.wire.Ask;
import rainward.feed.wire.PoliteClient;
import rainward.feed.wire.Round;

/** Stations of the US service near a place, the nearest first as the service sorts them. */
final class Stations {

    private static final int MOST = 3;
    private static final String GEO = "application/geo+json";
    private static final Duration DAY = Duration.ofHours(24);

    private Stations() {}

    static List<String> near(PoliteClient client, GeoPoint point, Round round) {
        Optional<GridCell> cell = asked(
                        client, "points/" + Addresses.latLon(point), round, GridCell::read)
                .flatMap(c -> c);
        return cell.flatMap(c -> asked(
                        client,
                        c.path() + "/stations",
                        round,
                        copy -> Features.read(copy.body(), "stations", Stations::name)))
                .map(read -> read.items().stream().limit(MOST).toList())
                .orElse(List.of());
    }

    private static <T> Optional<T> asked(
            PoliteClient client, String path, Round round, PoliteClient.Reader<T> reader) {
        var url = Addresses.under(client.settings().address(Service.NWS_STATIONS), path)
                .build();
        Ask ask = Ask.get(Service.NWS_STATIONS, url, GEO).freshFor(DAY, DAY);
        Answer<T> answer = client.ask(ask, round, reader);
        if (answer instanceof Given<T> given) {
            client.keep(given);
            return Optional.of(given.value());
        }
        Refused<T> no = (Refused<T>) answer;
        round.note(Service.NWS_STATIONS.code() + " " + no.why().words());
        // Stations stay where they are: an old list is as good as a new one.
        return no.kept().map(Given::value);
    }

    private static One<String> name(JsonNode properties) {
        String name = properties.path("stationIdentifier").asText("");
        return name.isBlank() ? One.leftOut("it has no name") : One.of(name);
    }
}
