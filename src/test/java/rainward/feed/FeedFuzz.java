package rainward.feed;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.List;
import java.util.Map;
import rainward.feed.alert.AlertFeatures;
import rainward.feed.hourly.ReadForecast;
import rainward.feed.nws.GridCell;
import rainward.feed.nws.GridForecast;
import rainward.feed.past.RainRows;
import rainward.feed.point.ColumnForecast;
import rainward.feed.point.EnsembleColumns;
import rainward.feed.point.MetForecast;
import rainward.feed.reading.Unreadable;
import rainward.feed.terms.Service;
import rainward.feed.wire.PoliteClient;
import rainward.feed.wire.Round;
import rainward.feed.wire.Sha256;
import rainward.weather.source.LastGoodCopies.Copy;
import rainward.weather.source.LastGoodCopies.Times;

/**
 * Answers of weather services, grown by coverage: each is read or refused in words. In the build
 * the kept corpus alone is read; {@code src/site/service.md} tells how to fuzz on.
 */
class FeedFuzz {

    @FuzzTest(maxDuration = "10m")
    void nws(byte[] body) {
        readOrRefused(
                body,
                copy -> GridForecast.read(copy).series(Sky.FARM, new Round(Sky.NOW), Sky.NOW));
        readOrRefused(body, GridCell::read);
        readOrRefused(body, AlertFeatures::read);
        readOrRefused(body, RainRows::station);
    }

    @FuzzTest(maxDuration = "10m")
    void metNorway(byte[] body) {
        var place = new ReadForecast.Place(Service.MET_NORWAY, Sky.FARM, Sky.NOW);
        readOrRefused(body, copy -> MetForecast.read(copy).series(place, Sky.NOW, List.of()));
    }

    @FuzzTest(maxDuration = "10m")
    void openMeteo(byte[] body) {
        var place = new ReadForecast.Place(Service.OPEN_METEO, Sky.FARM, Sky.NOW);
        readOrRefused(body, copy -> ColumnForecast.read(copy).series(place, Sky.NOW, List.of()));
        readOrRefused(body, copy -> EnsembleColumns.read(copy, Sky.FARM));
    }

    private static void readOrRefused(byte[] body, PoliteClient.Reader<?> reader) {
        Times now = new Times(Sky.NOW, Sky.NOW);
        try {
            reader.read(new Copy("x", Map.of(), body, Sha256.of(body), now));
        } catch (Unreadable e) {
            if (e.words().isBlank() || e.words().length() > 400) {
                throw new IllegalStateException("no sentence for a person: " + e.words(), e);
            }
        }
    }
}
