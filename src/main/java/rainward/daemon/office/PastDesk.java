package rainward.daemon.office;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.farm.Property;
import rainward.farm.Window;
import rainward.store.Books;
import rainward.weather.past.PastWeather;
import rainward.weather.rain.RainAmount;
import rainward.weather.sky.HourlyAir;
import rainward.weather.source.ForecastSeries;

/** Puts the past of a property together from the records. */
public final class PastDesk {

    private final Office office;

    public PastDesk(Office office) {
        this.office = office;
    }

    /** The run-up of the soil to the full hour of a moment. */
    public PastWeather of(Books books, Property property, Instant now) {
        return of(books, property, new Window(now.minus(office.settings().soil().runUp()), now));
    }

    /** A stretch of time that is past, in full hours. */
    public PastWeather of(Books books, Property property, Window stretch) {
        Instant hour = stretch.to().truncatedTo(ChronoUnit.HOURS);
        Window span = new Window(stretch.from().truncatedTo(ChronoUnit.HOURS), hour);
        LastResort.Heard heard = LastResort.heard(books, property.name());
        List<HourlyAir> air = new ArrayList<>();
        List<RainAmount> forecastRain = new ArrayList<>();
        Optional<ForecastSeries> newest = WeatherDesk.forecast(books, property.name());
        newest.map(f -> ElapsedWeather.of(f, hour)).ifPresent(elapsed -> {
            air.add(heard.over(elapsed.air()));
            forecastRain.addAll(elapsed.rain());
        });
        WeatherDesk.elapsed(books, property.name()).ifPresent(elapsed -> {
            air.add(heard.over(elapsed.air()));
            forecastRain.addAll(elapsed.rain());
        });
        return PastWeather.of(
                new PastWeather.Known(
                        books.rain().newest(property.name(), span), List.of(), air, forecastRain),
                new PastWeather.Frame(
                        span,
                        office.zone(),
                        property.place(),
                        office.climate(),
                        office.settings().weather().traces().seed()));
    }
}
