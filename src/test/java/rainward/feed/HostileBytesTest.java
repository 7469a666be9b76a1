package rainward.feed;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rainward.feed.alert.AlertFeatures;
import rainward.feed.hourly.ReadForecast;
import rainward.feed.nws.GridCell;
import rainward.feed.nws.GridForecast;
import rainward.feed.past.RainRows;
import rainward.feed.point.ColumnForecast;
import rainward.feed.point.EnsembleColumns;
import rainward.feed.point.MetForecast;
import rainward.feed.reading.Unreadable;
import rainward.feed.soil.SoilGridLayers;
import rainward.feed.soil.SoilSurveyTable;
import rainward.feed.terms.Service;
import rainward.feed.wire.PoliteClient;
import rainward.feed.wire.Round;
import rainward.feed.wire.Sha256;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.LastGoodCopies.Copy;
import rainward.weather.source.LastGoodCopies.Times;

/**
 * Whatever is done to an answer, it is read or it is refused in words; it never breaks a reader.
 */
class HostileBytesTest {

    private static final String[] PIECES = {
        "null",
        "NaN",
        "-1e308",
        "1e308",
        "\"\"",
        "[]",
        "{}",
        "true",
        "-0.0",
        "99999999999999999999",
        "\"2026-13-45T99:99:99Z\"",
        "\"P1M\"",
        "\"+999999999-12-31T23:59:59Z/P1D\"",
        "\"/\"",
        "\"9999-12-31T23:00:00Z/PT1H\"",
        "\"-999999999-01-01T00:00:00Z/PT1H\"",
        "\"2026-07-15T06:00:00Z/P99999999999D\"",
        "\"PT1H/-999999999-01-01T00:00:00Z\"",
        "\"2026-07-15T06:00:00Z/-P99999999999D\"",
        "0.5e-320",
        "9223372036854775807",
        "\"\\u0000\""
    };

    private final SplittableRandom chance = new SplittableRandom(4711);

    @Test
    void rawLayersAreReadOrRefused() {
        fuzz("nws-grid.json", 400, copy -> seriesOf(GridForecast.read(copy)));
    }

    @Test
    void pointsAreReadOrRefused() {
        fuzz("nws-point.json", 400, GridCell::read);
    }

    @Test
    void worldForecastsAreReadOrRefused() {
        fuzz("met-complete.json", 250, copy -> seriesOf(MetForecast.read(copy)));
    }

    @Test
    void columnsAreReadOrRefused() {
        fuzz("open-meteo.json", 300, copy -> seriesOf(ColumnForecast.read(copy)));
        fuzz("open-meteo-ensemble.json", 300, copy -> EnsembleColumns.read(copy, Sky.FARM));
    }

    @Test
    void alertsAreReadOrRefused() {
        fuzz("alerts.json", 400, AlertFeatures::read);
    }

    @Test
    void smallAnswersAreReadOrRefused() {
        fuzzText(
                "{\"gridi\":7,\"data\":[{\"end_valid\":\"2026-07-14T01:00:00Z\",\"precip_in\":0.1}]}",
                300,
                RainRows::stageFour);
        fuzzText("{\"data\":[[\"2026-07-13\",3.5],[\"2026-07-14\",-999]]}", 300, RainRows::acis);
        fuzzText(
                "{\"features\":[{\"properties\":{\"timestamp\":\"2026-07-15T09:53:00Z\","
                        + "\"precipitationLastHour\":{\"unitCode\":\"wmoUnit:mm\",\"value\":1}}}]}",
                300,
                RainRows::station);
        fuzzText(
                "{\"Table\":[[\"compname\",\"comppct_r\",\"hzdept_r\",\"hzdepb_r\",\"sandtotal_r\","
                        + "\"claytotal_r\"],[\"Oak\",\"60\",\"0\",\"20\",\"50\",\"20\"]]}",
                300,
                SoilSurveyTable::read);
        fuzzText(
                "{\"properties\":{\"layers\":[" + layer("sand") + "," + layer("clay") + "]}}",
                300,
                SoilGridLayers::read);
    }

    private static String layer(String name) {
        return "{\"name\":\"" + name
                + "\",\"unit_measure\":{\"d_factor\":10},\"depths\":[{\"range\":"
                + "{\"top_depth\":0,\"bottom_depth\":5},\"values\":{\"mean\":400}}]}";
    }

    private static Optional<ForecastSeries> seriesOf(GridForecast grid) {
        return grid.series(Sky.FARM, new Round(Sky.NOW), Sky.NOW);
    }

    private static Optional<ForecastSeries> seriesOf(ReadForecast forecast) {
        var place = new ReadForecast.Place(Service.MET_NORWAY, Sky.FARM, Sky.NOW);
        return forecast.series(place, Sky.NOW, List.of());
    }

    private void fuzz(String fixture, int rounds, PoliteClient.Reader<?> reader) {
        fuzzText(Sky.fixture(fixture), rounds, reader);
    }

    private void fuzzText(String whole, int rounds, PoliteClient.Reader<?> reader) {
        int read = 0;
        List<String> refusals = new ArrayList<>();
        for (int round = 0; round < rounds; round++) {
            String broken = whole;
            for (int change = chance.nextInt(0, 5); change > 0; change--) {
                broken = changed(broken);
            }
            try {
                reader.read(copy(broken));
                read++;
            } catch (Unreadable e) {
                refusals.add(e.words());
            }
        }
        assertThat(read).as("some changes do not matter").isPositive();
        assertThat(refusals).as("others do").isNotEmpty().allMatch(w -> w.length() < 400);
    }

    /** One value replaced, one letter changed, or the end cut off; values most of all. */
    private String changed(String text) {
        int at = chance.nextInt(Math.max(1, text.length()));
        int what = chance.nextInt(10);
        if (what == 0) {
            return text.substring(0, at);
        }
        if (what == 1) {
            char letter = (char) (32 + chance.nextInt(95));
            return text.substring(0, at) + letter + text.substring(Math.min(text.length(), at + 1));
        }
        int colon = text.indexOf(':', at);
        int end = colon;
        while (end > 0 && end < text.length() && ",]}\n".indexOf(text.charAt(end)) < 0) {
            end++;
        }
        String piece = PIECES[chance.nextInt(PIECES.length)];
        return colon < 0 ? text : text.substring(0, colon + 1) + piece + text.substring(end);
    }

    private static Copy copy(String text) {
        byte[] body = text.getBytes(UTF_8);
        Instant at = Sky.NOW;
        return new Copy("x", Map.of(), body, Sha256.of(body), new Times(at, at));
    }
}
