package rainward.replay.crew;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import rainward.daemon.demo.DemoScene;
import rainward.replay.truth.InventedStation;
import rainward.replay.truth.TrueWeather;
import rainward.soil.verify.StationYear;
import rainward.weather.past.ObservedWeather;

/** Thirty of the demo's fields in an invented summer. */
final class Worlds {

    static final LocalDate START = LocalDate.of(2020, 7, 6);
    static final int DAYS = 24;
    static final Scene SCENE = scene();

    private Worlds() {}

    private static Scene scene() {
        Scene demo = DemoScene.read(10);
        return new Scene(demo.roster(), demo.fields().subList(0, 30), demo.rules());
    }

    static TrueWeather truth(long seed) {
        StationYear year =
                InventedStation.of(SCENE.rules().draw().climate(), SCENE.yard(), 2020, seed);
        StationYear summer = new StationYear(
                year.station(),
                year.place(),
                year.days().stream()
                        .filter(d -> d.weather().day().getMonthValue() >= 5
                                && d.weather().day().getMonthValue() <= 9)
                        .toList());
        return TrueWeather.of(summer, List.copyOf(SCENE.roster().properties().values()), seed);
    }

    static World world(TrueWeather truth) {
        return new World(SCENE, truth, new World.Span(START, DAYS), 7);
    }

    static Instant five(int day) {
        return START.plusDays(day)
                .atTime(5, 0)
                .atZone(SCENE.roster().crew().zone())
                .toInstant();
    }

    /** The same weather with other rain at every property. */
    static TrueWeather with(TrueWeather truth, Consumer<double[]> rained) {
        Map<String, ObservedWeather> changed = new TreeMap<>();
        truth.byProperty().forEach((property, weather) -> {
            double[] rain = weather.rainMm().clone();
            rained.accept(rain);
            changed.put(property, new ObservedWeather(weather.air(), weather.sun(), rain));
        });
        return new TrueWeather(changed, truth.year());
    }

    /** Index of an hour in the weather. */
    static int hour(TrueWeather truth, Instant at) {
        ObservedWeather any = truth.byProperty().values().iterator().next();
        return (int) Duration.between(any.air().start(), at).toHours();
    }
}
