package rainward.feed.soil;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import okhttp3.HttpUrl;
import rainward.farm.GeoPoint;
import rainward.farm.SurveyedSoil;
import rainward.feed.terms.Addresses;
import rainward.feed.terms.Service;
import rainward.feed.wire.Answer;
import rainward.feed.wire.Answer.Given;
import rainward.feed.wire.Answer.Refused;
import rainward.feed.wire.Ask;
import rainward.feed.wire.Ask.Posted;
import rainward.feed.wire.PoliteClient;
import rainward.feed.wire.Round;
import rainward.weather.source.RawPull;

/**
 * Soil at a place without typing it in: the US soil survey, elsewhere the world grid. Fetched once
 * a field and year, never waited for; without an answer the person types the texture in.
 */
public final class SoilByPoint {

    private static final Duration YEAR = Duration.ofDays(365);

    private static final String AT_ONE_POINT =
            "at one point of the field, since the whole of it could not be had";

    private final PoliteClient client;

    public SoilByPoint(PoliteClient client) {
        this.client = client;
    }

    /**
     * What could be had.
     *
     * @param soil the proposal, if any
     * @param notes what failed, for the user
     * @param answers as received
     */
    public record Proposal(Optional<SurveyedSoil> soil, List<String> notes, List<RawPull> answers) {

        public Proposal {
            notes = List.copyOf(notes);
            answers = List.copyOf(answers);
        }
    }

    /**
     * Asks the soil survey for the whole field, each map unit by the share that it has of it; where
     * that fails or makes no sense for the map unit at a point inside, which the soil then says of
     * itself, and then the world grid.
     *
     * @param point inside the field
     * @param boundaryWkt its edge in well-known text, longitude first; numbers and signs only
     * @param asOf now
     */
    public Proposal at(GeoPoint point, Optional<String> boundaryWkt, Instant asOf) {
        Round round = new Round(asOf);
        List<String> notes = new ArrayList<>();
        Optional<SurveyedSoil> soil =
                boundaryWkt.flatMap(edge -> ask(within(edge), SoilSurveyTable::read, round, notes));
        if (soil.isEmpty()) {
            soil = ask(survey(point), SoilSurveyTable::read, round, notes)
                    .map(s -> boundaryWkt.isPresent() ? s.but(AT_ONE_POINT) : s);
        }
        if (soil.isEmpty()) {
            soil = ask(grid(point), SoilGridLayers::read, round, notes);
        }
        return new Proposal(soil, notes, round.answers());
    }

    private Optional<SurveyedSoil> ask(
            Ask ask, PoliteClient.Reader<SurveyedSoil> reader, Round round, List<String> notes) {
        Answer<SurveyedSoil> answer = client.ask(ask.freshFor(YEAR, YEAR), round, reader);
        if (answer instanceof Given<SurveyedSoil> given) {
            client.keep(given);
            return Optional.of(given.value());
        }
        notes.add(ask.service().code() + " " + ((Refused<?>) answer).why().words());
        return Optional.empty();
    }

    /**
     * The form of the question is that of the survey's own users: the service takes no variables,
     * so the edge stands in it as often as it is needed, and an edge that crosses itself is made
     * valid first, since such a one is answered with nothing. A share is a ratio of areas in square
     * degrees, which is fair within one field.
     */
    private Ask within(String edge) {
        String field = "geometry::STGeomFromText('" + edge + "', 4326).MakeValid()";
        return question(
                ", a.mukey, a.map_share FROM (SELECT mukey,"
                        + " SUM(mupolygongeo.STIntersection(" + field + ").STArea()) / " + field
                        + ".STArea() AS map_share FROM mupolygon WHERE mupolygongeo.STIntersects("
                        + field
                        + ") = 1 GROUP BY mukey) a LEFT JOIN component c ON c.mukey = a.mukey",
                "a.map_share DESC, ");
    }

    /** Built from numbers only; longitude comes first in WKT. */
    private Ask survey(GeoPoint point) {
        String place = Addresses.degrees(point.longitudeDeg(), 5) + " "
                + Addresses.degrees(point.latitudeDeg(), 5);
        return question(
                " FROM (SELECT mukey FROM mapunit WHERE mukey IN (SELECT * FROM"
                        + " SDA_Get_Mukey_from_intersection_with_WktWgs84('point(" + place
                        + ")'))) m LEFT JOIN component c ON c.mukey = m.mukey",
                "");
    }

    /** Components and their horizons; a component without horizons is water, rock or made land. */
    private Ask question(String from, String firstOrder) {
        return asked("SELECT c.compname, c.comppct_r, c.slope_r, h.hzdept_r, h.hzdepb_r,"
                + " h.sandtotal_r, h.silttotal_r, h.claytotal_r, h.om_r" + from
                + " LEFT JOIN chorizon h ON h.cokey = c.cokey ORDER BY " + firstOrder
                + "c.comppct_r DESC, h.hzdept_r");
    }

    private Ask asked(String query) {
        HttpUrl url = Addresses.under(
                        client.settings().address(Service.SOIL_SURVEY), "tabular/post.rest")
                .build();
        String form = "format=json%2Bcolumnname&query="
                + URLEncoder.encode(query, StandardCharsets.UTF_8).replace("+", "%20");
        return Ask.post(
                Service.SOIL_SURVEY, url, new Posted("application/x-www-form-urlencoded", form));
    }

    private Ask grid(GeoPoint point) {
        HttpUrl.Builder url = Addresses.under(
                        client.settings().address(Service.SOIL_GRIDS),
                        "soilgrids/v2.0/properties/query")
                .addQueryParameter("lon", Addresses.degrees(point.longitudeDeg(), 4))
                .addQueryParameter("lat", Addresses.degrees(point.latitudeDeg(), 4))
                .addQueryParameter("value", "mean");
        for (String property : List.of("sand", "clay", "soc")) {
            url.addQueryParameter("property", property);
        }
        for (String depth : List.of("0-5cm", "5-15cm", "15-30cm")) {
            url.addQueryParameter("depth", depth);
        }
        return Ask.get(Service.SOIL_GRIDS, url.build(), "application/json");
    }
}
