package rainward.feed.point;

import java.util.List;
import rainward.feed.hourly.AirLayers;
import rainward.feed.hourly.RainLayers;
import rainward.feed.hourly.ReadForecast;
import rainward.feed.reading.Notes;
import rainward.feed.reading.Quantity;
import rainward.feed.reading.Spell;
import rainward.feed.reading.Unreadable;
import rainward.weather.source.LastGoodCopies.Copy;

/** Reads a forecast of Open-Meteo. */
public final class ColumnForecast {

    private ColumnForecast() {}

    public static ReadForecast read(Copy copy) throws Unreadable {
        Notes notes = new Notes();
        Columns columns = Columns.of(copy.body(), notes);
        AirLayers air = new AirLayers(
                columns.moments("temperature_2m", Quantity.AIR_TEMP),
                columns.moments("dew_point_2m", Quantity.DEW_POINT),
                columns.moments("relative_humidity_2m", Quantity.SHARE),
                columns.moments("wind_speed_10m", Quantity.WIND),
                columns.moments("cloud_cover", Quantity.SHARE));
        if (air.airTempC().isEmpty()) {
            throw new Unreadable("sent a forecast without a readable temperature");
        }
        List<Spell> amounts = columns.hoursBefore("precipitation", Quantity.RAIN);
        List<Spell> chances = columns.hoursBefore("precipitation_probability", Quantity.SHARE);
        notes.say("time of issue: not told by this service, the time of the answer stands in");
        return new ReadForecast(
                copy.times().fetchedAt(), air, new RainLayers(amounts, chances), notes.all());
    }
}
