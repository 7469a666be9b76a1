package rainward.feed.point;

import java.time.Instant;
import java.util.Optional;
import rainward.farm.GeoPoint;
import rainward.feed.hourly.ReadForecast;
import rainward.feed.terms.Addresses;
import rainward.feed.terms.Service;
import rainward.feed.wire.Answer;
import rainward.feed.wire.Answer.Given;
import rainward.feed.wire.Answer.How;
import rainward.feed.wire.Answer.Refused;
import rainward.feed.wire.Answer.Why;
import rainward.feed.wire.Ask;
import rainward.feed.wire.PoliteClient;
import rainward.feed.wire.Round;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.ForecastSource;
import rainward.weather.source.Pull;
import rainward.weather.source.PullOutcome;
import rainward.weather.source.PullOutcome.Failed;
import rainward.weather.source.PullOutcome.Fetched;
import rainward.weather.source.PullOutcome.Kind;
import rainward.weather.source.PullOutcome.Unchanged;

/** A service that answers a point with a forecast in one question. */
abstract class PlainSource implements ForecastSource {

    private final PoliteClient client;
    private final Service service;

    PlainSource(PoliteClient client, Service service) {
        this.client = client;
        this.service = service;
    }

    /** The question about a place that several fields may share. */
    abstract Ask ask(GeoPoint shared);

    /** Reads the answer. */
    abstract PoliteClient.Reader<ReadForecast> reader();

    @Override
    public final String name() {
        return service.code();
    }

    final PoliteClient client() {
        return client;
    }

    @Override
    public Pull pull(GeoPoint point, Instant asOf) {
        Round round = new Round(asOf);
        GeoPoint shared = Addresses.shared(point);
        Answer<ReadForecast> answer = client.ask(ask(shared), round, reader());
        return new Pull(outcome(answer, new Where(shared, round)), round.answers());
    }

    private record Where(GeoPoint point, Round round) {}

    private PullOutcome outcome(Answer<ReadForecast> answer, Where where) {
        if (answer instanceof Refused<ReadForecast> no) {
            return failed(no.why(), no.kept().flatMap(given -> series(given, where)));
        }
        Given<ReadForecast> given = (Given<ReadForecast>) answer;
        where.round().issued(given.value().issuedAt());
        Optional<ForecastSeries> series = series(given, where);
        if (series.isEmpty()) {
            Why why = Why.of(Kind.STALE, "sent a forecast that does not cover the coming hours");
            return failed(why, Optional.empty());
        }
        client.keep(given);
        return given.how() == How.NEW
                ? new Fetched(series.get())
                : new Unchanged(series.get(), given.copy().times().confirmedAt());
    }

    private Optional<ForecastSeries> series(Given<ReadForecast> given, Where where) {
        var place = new ReadForecast.Place(service, where.point(), where.round().asOf());
        Instant pulledAt = given.copy().times().confirmedAt();
        return given.value().series(place, pulledAt, where.round().notes());
    }

    private PullOutcome failed(Why why, Optional<ForecastSeries> kept) {
        return new Failed(why.kind(), name() + " " + why.words(), why.retryAt(), kept);
    }
}
