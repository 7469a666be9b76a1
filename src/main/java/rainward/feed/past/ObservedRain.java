package rainward.feed.past;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import okhttp3.HttpUrl;
import rainward.farm.GeoPoint;
import rainward.feed.terms.Addresses;
import rainward.feed.terms.Service;
import rainward.feed.wire.Answer;
import rainward.feed.wire.Answer.Given;
import rainward.feed.wire.Answer.Refused;
import rainward.feed.wire.Ask;
import rainward.feed.wire.Ask.Posted;
import rainward.feed.wire.PoliteClient;
import rainward.feed.wire.Round;
import rainward.weather.rain.RainObservation;
import rainward.weather.source.RawPull;

/**
 * Rain that fell: an hourly analysis (Stage IV), a daily one (PRISM by ACIS), and reports of the
 * nearest stations as the last resort. Analyses change for up to nine days, so the last ten are
 * asked for again once a day.
 */
public final class ObservedRain {

    /** Days over which the hourly analysis is still adjusted. */
    public static final int REVISED_DAYS = 10;

    private final PoliteClient client;

    public ObservedRain(PoliteClient client) {
        this.client = client;
    }

    /**
     * What could be had.
     *
     * @param rain observed amounts with their windows
     * @param air of a station, hour by hour with gaps; empty from analyses
     * @param notes what failed or was left out, for the user
     * @param answers as received
     */
    public record Fallen(
            List<RainObservation> rain,
            List<StationAir> air,
            List<String> notes,
            List<RawPull> answers) {

        public Fallen {
            rain = List.copyOf(rain);
            air = List.copyOf(air);
            notes = List.copyOf(notes);
            answers = List.copyOf(answers);
        }
    }

    /** Hours of one UTC day from the hourly analysis; each amount ends at its time. */
    public Fallen hourly(GeoPoint point, LocalDate utcDay, Instant asOf) {
        GeoPoint shared = Addresses.shared(point);
        HttpUrl url = Addresses.under(client.settings().address(Service.STAGE4), "json/stage4.py")
                .addQueryParameter("lat", Addresses.degrees(shared.latitudeDeg(), 2))
                .addQueryParameter("lon", Addresses.degrees(shared.longitudeDeg(), 2))
                .addQueryParameter("valid", utcDay.toString())
                .addQueryParameter("tz", "UTC")
                .build();
        Ask ask = Ask.get(Service.STAGE4, url, "application/json");
        return ask(ask, asOf, RainRows::stageFour);
    }

    /** Days from the daily analysis; each ends at 12 UTC of its date. */
    public Fallen daily(GeoPoint point, Days days, Instant asOf) {
        GeoPoint shared = Addresses.shared(point);
        String query = "{\"loc\":\"" + Addresses.degrees(shared.longitudeDeg(), 2) + ","
                + Addresses.degrees(shared.latitudeDeg(), 2) + "\",\"sdate\":\""
                + days.first() + "\",\"edate\":\"" + days.last()
                + "\",\"grid\":\"21\",\"elems\":[{\"name\":\"pcpn\",\"interval\":\"dly\","
                + "\"units\":\"mm\"}],\"output\":\"json\"}";
        HttpUrl url = Addresses.under(client.settings().address(Service.ACIS), "GridData")
                .build();
        Ask ask = Ask.post(Service.ACIS, url, new Posted("application/json", query));
        return ask(ask, asOf, RainRows::acis);
    }

    /**
     * Reports of the nearest stations, one after the other until one knows rain; three at most. The
     * last resort: as a rule they hold none.
     */
    public Fallen nearestStations(GeoPoint point, Instant asOf) {
        List<RainObservation> rain = List.of();
        List<StationAir> air = List.of();
        Round round = new Round(asOf);
        List<String> notes = new ArrayList<>();
        List<RawPull> answers = new ArrayList<>();
        List<String> near = Stations.near(client, point, round);
        answers.addAll(round.answers());
        notes.addAll(round.notes());
        if (near.isEmpty() && notes.isEmpty()) {
            notes.add("stations: none is known near this place");
        }
        for (int i = 0; i < near.size() && rain.isEmpty(); i++) {
            Fallen fallen = station(near.get(i), asOf);
            rain = fallen.rain();
            air = air.isEmpty() ? fallen.air() : air;
            notes.addAll(fallen.notes());
            answers.addAll(fallen.answers());
        }
        return new Fallen(rain, air, notes, answers);
    }

    /** Reports of a station; as a rule they hold no rain. */
    public Fallen station(String station, Instant asOf) {
        if (!station.matches("[A-Z0-9]{3,8}")) {
            return new Fallen(
                    List.of(),
                    List.of(),
                    List.of("station '" + station + "' is not a name"),
                    List.of());
        }
        HttpUrl url = Addresses.under(
                        client.settings().address(Service.NWS_STATIONS),
                        "stations/" + station + "/observations")
                .addQueryParameter("limit", "100")
                .build();
        Ask ask = Ask.get(Service.NWS_STATIONS, url, "application/geo+json");
        return ask(ask, asOf, RainRows::station);
    }

    /**
     * True where a day has to be asked for: never fetched; of the last ten days and not fetched for
     * a day; or still under way when it was fetched and not fetched for an hour.
     *
     * @param utcDay the day
     * @param fetchedAt when it was last fetched, if ever
     * @param asOf now
     */
    public static boolean due(LocalDate utcDay, Optional<Instant> fetchedAt, Instant asOf) {
        if (fetchedAt.isEmpty()) {
            return true;
        }
        Instant end = utcDay.plusDays(1).atStartOfDay(ZoneOffset.UTC).toInstant();
        Duration since = Duration.between(fetchedAt.get(), asOf);
        boolean unfinished = fetchedAt.get().isBefore(end.plus(Duration.ofHours(3)));
        if (unfinished) {
            return since.compareTo(Duration.ofHours(1)) >= 0;
        }
        boolean stillRevised = fetchedAt.get().isBefore(end.plus(Duration.ofDays(REVISED_DAYS)));
        return stillRevised && since.compareTo(Duration.ofHours(24)) >= 0;
    }

    /** First and last date, both inclusive. */
    public record Days(LocalDate first, LocalDate last) {}

    private Fallen ask(Ask ask, Instant asOf, PoliteClient.Reader<RainRows> reader) {
        Round round = new Round(asOf);
        Answer<RainRows> answer = client.ask(ask, round, reader);
        List<String> notes = new ArrayList<>(round.notes());
        if (answer instanceof Given<RainRows> given) {
            client.keep(given);
            notes.addAll(given.value().notes());
            return new Fallen(given.value().rain(), given.value().air(), notes, round.answers());
        }
        Refused<RainRows> no = (Refused<RainRows>) answer;
        notes.add(ask.service().code() + " " + no.why().words());
        List<RainObservation> kept =
                no.kept().map(given -> given.value().rain()).orElse(List.of());
        return new Fallen(kept, List.of(), notes, round.answers());
    }
}
