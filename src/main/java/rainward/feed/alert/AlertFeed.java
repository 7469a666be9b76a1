package rainward.feed.alert;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import okhttp3.HttpUrl;
import rainward.farm.GeoPoint;
import rainward.feed.reading.Features;
import rainward.feed.terms.Addresses;
import rainward.feed.terms.Service;
import rainward.feed.wire.Answer;
import rainward.feed.wire.Answer.Given;
import rainward.feed.wire.Answer.Refused;
import rainward.feed.wire.Ask;
import rainward.feed.wire.PoliteClient;
import rainward.feed.wire.Round;
import rainward.weather.alert.PublicAlert;
import rainward.weather.source.RawPull;

/** Alerts in force at a place, from the US service. */
public final class AlertFeed {

    private final PoliteClient client;

    public AlertFeed(PoliteClient client) {
        this.client = client;
    }

    /**
     * One poll.
     *
     * @param alerts in force; empty where nobody knows: never taken for "no alert"
     * @param notes what failed or was left out, for the user
     * @param answers as received
     */
    public record Poll(
            Optional<List<PublicAlert>> alerts, List<String> notes, List<RawPull> answers) {

        public Poll {
            alerts = alerts.map(List::copyOf);
            notes = List.copyOf(notes);
            answers = List.copyOf(answers);
        }
    }

    /** Asks what is in force at a place. */
    public Poll pull(GeoPoint point, Instant asOf) {
        Round round = new Round(asOf);
        HttpUrl url = Addresses.under(
                        client.settings().address(Service.NWS_ALERTS), "alerts/active")
                .addQueryParameter("point", Addresses.latLon(point))
                .build();
        Ask ask = Ask.get(Service.NWS_ALERTS, url, "application/geo+json")
                .freshFor(Service.NWS_ALERTS.manners().leastAge(), Duration.ofMinutes(10));
        Answer<Features.Read<PublicAlert>> answer = client.ask(ask, round, AlertFeatures::read);
        List<String> notes = new ArrayList<>(round.notes());
        if (answer instanceof Given<Features.Read<PublicAlert>> given) {
            client.keep(given);
            notes.addAll(given.value().notes());
            return new Poll(Optional.of(given.value().items()), notes, round.answers());
        }
        notes.add("alerts: nws " + ((Refused<?>) answer).why().words());
        return new Poll(Optional.empty(), notes, round.answers());
    }
}
