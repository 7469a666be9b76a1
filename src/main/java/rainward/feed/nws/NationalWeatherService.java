package rainward.feed.nws;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import rainward.farm.GeoPoint;
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

/**
 * The US National Weather Service: point to grid cell, cell to raw layers, layers to hours. Free,
 * without key, for any use; the default in the USA.
 */
public final class NationalWeatherService implements ForecastSource {

    private static final String GEO = "application/geo+json";
    private static final String LINKED = "application/ld+json";

    private final PoliteClient client;

    public NationalWeatherService(PoliteClient client) {
        this.client = client;
    }

    @Override
    public String name() {
        return Service.NWS.code();
    }

    @Override
    public Pull pull(GeoPoint point, Instant asOf) {
        Round round = new Round(asOf);
        PullOutcome outcome = pull(new Place(point, round));
        return new Pull(outcome, round.answers());
    }

    /** A place and the pull that asks about it. */
    private record Place(GeoPoint point, Round round) {}

    private PullOutcome pull(Place place) {
        Ask ask = askPoint(place.point());
        Answer<Optional<GridCell>> first = client.ask(ask, place.round(), GridCell::read);
        Optional<GridCell> cell = cellOf(first);
        if (cell.isEmpty()) {
            return noCell(first, place);
        }
        PullOutcome outcome = pull(cell.get(), place);
        boolean known = first instanceof Given<Optional<GridCell>> g && g.how() == How.KEPT;
        boolean gone = outcome instanceof Failed f && f.kind() == Kind.NOT_SERVED;
        return known && gone ? resolveAgain(cell.get(), outcome, place) : outcome;
    }

    /** The service moves its grid now and then: a cell that is gone is looked up again, once. */
    private PullOutcome resolveAgain(GridCell old, PullOutcome gone, Place place) {
        Ask anew = askPoint(place.point()).anew();
        Optional<GridCell> now = cellOf(client.ask(anew, place.round(), GridCell::read));
        if (now.isEmpty() || now.get().equals(old)) {
            return gone;
        }
        place.round()
                .note("the grid has moved: " + old.path() + " is now "
                        + now.get().path());
        return pull(now.get(), place);
    }

    private Optional<GridCell> cellOf(Answer<Optional<GridCell>> answer) {
        if (answer instanceof Given<Optional<GridCell>> given) {
            client.keep(given);
            return given.value();
        }
        // A cell known from before is better than none while the look-up is down.
        return answer instanceof Refused<Optional<GridCell>> no
                        && no.why().kind() != Kind.NOT_SERVED
                ? no.kept().flatMap(Given::value)
                : Optional.empty();
    }

    private PullOutcome noCell(Answer<Optional<GridCell>> answer, Place place) {
        Why why = answer instanceof Refused<Optional<GridCell>> no
                ? no.why()
                : Why.of(Kind.NOT_SERVED, "has no forecast grid at this place");
        return failed(why, place, Optional.empty());
    }

    private PullOutcome pull(GridCell cell, Place place) {
        if (cell.marine()) {
            Why why = Why.of(Kind.NOT_SERVED, "has only a marine forecast at this place");
            return failed(why, place, Optional.empty());
        }
        Ask ask = Ask.get(Service.NWS, url(cell.path()), GEO).orElse(LINKED);
        Answer<GridForecast> answer = client.ask(ask, place.round(), GridForecast::read);
        if (answer instanceof Given<GridForecast> given) {
            return settle(ask, given, place);
        }
        Refused<GridForecast> no = (Refused<GridForecast>) answer;
        return failed(no.why(), place, no.kept());
    }

    /** Accepts an answer, unless an edge served an old one: then the other form is asked once. */
    private PullOutcome settle(Ask ask, Given<GridForecast> given, Place place) {
        place.round().issued(given.value().issuedAt());
        if (given.how() != How.NEW) {
            client.keep(given);
            return unchanged(given, place);
        }
        Optional<Given<GridForecast>> kept = client.kept(ask, GridForecast::read);
        if (acceptable(given, kept, place)) {
            return accept(given, place);
        }
        Ask other = ask.accepting(LINKED).anew();
        Answer<GridForecast> second = client.ask(other, place.round(), GridForecast::read);
        if (second instanceof Given<GridForecast> again) {
            place.round().issued(again.value().issuedAt());
            if (acceptable(again, kept, place)) {
                return accept(again, place);
            }
        }
        return stale(ask, given, kept, place);
    }

    private static boolean acceptable(
            Given<GridForecast> given, Optional<Given<GridForecast>> kept, Place place) {
        boolean older = kept.isPresent()
                && given.value().issuedAt().isBefore(kept.get().value().issuedAt());
        return given.value().current(place.round().now()) && !older;
    }

    /** Old twice over. An older copy never replaces a newer one; with none kept, old is better. */
    private PullOutcome stale(
            Ask ask, Given<GridForecast> given, Optional<Given<GridForecast>> kept, Place place) {
        boolean newer = kept.isEmpty()
                || kept.get().value().issuedAt().isBefore(given.value().issuedAt());
        if (newer && series(given.value(), place, place.round().now()).isPresent()) {
            place.round().note("this forecast is an old one, the service has no newer");
            return accept(given, place);
        }
        long hours =
                Duration.between(given.value().issuedAt(), place.round().now()).toHours();
        Why why = Why.of(
                Kind.STALE,
                "sent an old forecast, issued " + hours + " h ago"
                        + (newer ? "" : ", older than the one kept"));
        client.refuse(ask, place.round(), why);
        return failed(why, place, kept);
    }

    private PullOutcome accept(Given<GridForecast> given, Place place) {
        client.keep(given);
        return series(given.value(), place, given.copy().times().confirmedAt())
                .<PullOutcome>map(Fetched::new)
                .orElseGet(() -> past(place));
    }

    private PullOutcome unchanged(Given<GridForecast> given, Place place) {
        Instant confirmed = given.copy().times().confirmedAt();
        return series(given.value(), place, confirmed)
                .<PullOutcome>map(s -> new Unchanged(s, confirmed))
                .orElseGet(() -> past(place));
    }

    private PullOutcome past(Place place) {
        return failed(
                Why.of(Kind.STALE, "sent a forecast that does not cover the coming hours"),
                place,
                Optional.empty());
    }

    private PullOutcome failed(Why why, Place place, Optional<Given<GridForecast>> kept) {
        return new Failed(
                why.kind(),
                "nws " + why.words(),
                why.retryAt(),
                kept.flatMap(k -> series(k.value(), place, k.copy().times().confirmedAt())));
    }

    private static Optional<ForecastSeries> series(GridForecast grid, Place place, Instant at) {
        return grid.series(place.point(), place.round(), at);
    }

    private Ask askPoint(GeoPoint point) {
        return Ask.get(Service.NWS, url("points/" + Addresses.latLon(point)), GEO)
                .freshFor(Duration.ofHours(12), Duration.ofHours(24));
    }

    private okhttp3.HttpUrl url(String path) {
        return Addresses.under(client.settings().address(Service.NWS), path).build();
    }
}
