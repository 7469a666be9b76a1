package rainward.board.page;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import rainward.board.house.Gauge;
import rainward.board.picture.RainStrip;
import rainward.board.picture.TimeScale;
import rainward.brief.Brief;
import rainward.brief.ForecastAge;
import rainward.brief.RainPanel;
import rainward.brief.words.Reader;
import rainward.brief.words.SkyWords;
import rainward.cycle.RainPicture;
import rainward.farm.Window;

/**
 * Where the weather comes from, how old it is, and what fell.
 *
 * @param frame around it
 * @param alerts of public services
 * @param farms rain ahead by property
 * @param sources age of each forecast
 * @param notes credits and what was missing
 * @param gauges read lately
 * @param skill how good forecasts were, a line each
 */
public record WeatherPage(
        Frame frame,
        List<String> alerts,
        List<Farm> farms,
        List<Source> sources,
        List<String> notes,
        List<Reading> gauges,
        List<String> skill) {

    /** Rain ahead at one property. */
    public record Farm(String property, String words, Optional<RainStrip> strip) {}

    /** The forecast of one property. */
    public record Source(String property, String source, String issued, String age, String trust) {}

    /** A gauge that was read. */
    public record Reading(String property, String when, String amount) {}

    public static WeatherPage of(Frame frame, List<Gauge> gauges, List<String> skill) {
        Optional<Brief> brief = frame.standing().round().map(r -> r.brief());
        SkyWords sky = new SkyWords(frame.reader());
        return new WeatherPage(
                frame,
                brief.stream()
                        .flatMap(b -> b.sky().alerts().stream())
                        .map(sky::alert)
                        .toList(),
                brief.stream()
                        .flatMap(b -> b.sky().rain().stream())
                        .map(panel -> farm(frame, sky, panel))
                        .toList(),
                brief.stream()
                        .flatMap(b -> b.footing().forecasts().stream())
                        .map(age -> source(frame, age))
                        .toList(),
                brief.stream()
                        .flatMap(b -> java.util.stream.Stream.concat(
                                b.footing().credits().stream(), b.footing().warnings().stream()))
                        .toList(),
                gauges.stream().map(g -> reading(frame, g)).toList(),
                skill);
    }

    private static Farm farm(Frame frame, SkyWords sky, RainPanel panel) {
        if (panel.bars().isEmpty()) {
            return new Farm(panel.property(), "no forecast", Optional.empty());
        }
        Reader reader = frame.reader();
        List<RainPicture.Bar> bars = panel.bars();
        TimeScale scale = new TimeScale(
                new Window(
                        bars.get(0).window().from(),
                        bars.get(bars.size() - 1).window().to()),
                frame.standing().farm().zone());
        return new Farm(
                panel.property(),
                sky.rain(panel),
                Optional.of(RainStrip.of(
                        bars, new RainStrip.Reading(scale, reader.clock(), reader.units()))));
    }

    private static Source source(Frame frame, ForecastAge age) {
        var clock = frame.reader().clock();
        Duration old = Duration.between(age.issuedAt(), frame.now());
        return new Source(
                age.property(),
                age.source(),
                clock.dayTime(age.issuedAt()),
                Reader.hours(old.isNegative() ? Duration.ZERO : old),
                switch (age.trust()) {
                    case FRESH -> "fresh";
                    case AGEING -> "ageing: check before you act";
                    case STALE -> "old: chances are not to be trusted";
                    case NONE -> "none";
                });
    }

    private static Reading reading(Frame frame, Gauge gauge) {
        var clock = frame.reader().clock();
        return new Reading(
                gauge.property(),
                clock.dayTime(gauge.stretch().from()) + " to "
                        + clock.dayTime(gauge.stretch().to()),
                frame.reader().units().rain(gauge.rainMm()));
    }

    /** Properties whose gauge can be read. */
    public List<String> properties() {
        return farms.stream().map(Farm::property).toList();
    }
}
