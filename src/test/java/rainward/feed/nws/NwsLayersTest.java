package rainward.feed.nws;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rainward.feed.Sky.GRID;
import static rainward.feed.Sky.NOW;

import java.util.Arrays;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rainward.feed.Sky;
import rainward.feed.reading.Spans;
import rainward.weather.rain.RainAmount;
import rainward.weather.source.ForecastSeries;

/** Odd layers: what cannot be read is named and left out, what can be read is used. */
class NwsLayersTest {

    private static final String FIRST_RAIN =
            "2026-07-17T00:00:00+00:00/PT1H\",\n     \"value\": 1.2";
    private static final String SECOND_RAIN =
            "2026-07-17T01:00:00+00:00/PT1H\",\n     \"value\": 4.4";
    private static final double RAIN_AHEAD_MM = 26.74;

    private final Sky sky = Sky.fair();

    @AfterEach
    void close() {
        sky.close();
    }

    @Test
    void anIntervalThatIsNoneIsNamed() {
        ForecastSeries series = with("2026-07-17T01:00:00+00:00/PT1H", "undefined/PT1H");
        assertThat(series.warnings())
                .contains(
                        "temperature: 1 interval left out, the first because 'undefined/PT1H' is not"
                                + " a time interval",
                        "quantitativePrecipitation: 1 interval left out, the first because"
                                + " 'undefined/PT1H' is not a time interval");
        assertThat(rain(series)).isCloseTo(RAIN_AHEAD_MM - 4.4, within(1e-9));
    }

    @Test
    void aLayerOfBrokenIntervalsIsLeftOutWhole() {
        ForecastSeries series =
                layer("probabilityOfPrecipitation", "validTime\": \"2026", "validTime\": \"x");
        assertThat(series.rain().probabilities()).isEmpty();
        assertThat(series.warnings())
                .anyMatch(w -> w.startsWith("probabilityOfPrecipitation: 26 intervals left out"))
                .contains("rain chance: none known");
        assertThat(rain(series)).isCloseTo(RAIN_AHEAD_MM, within(1e-9));
    }

    @Test
    void zonesMayBeMixedWithinALayer() {
        ForecastSeries utc = Sky.series(sky.pull(NOW));
        ForecastSeries mixed = with("2026-07-17T01:00:00+00:00", "2026-07-16T21:00:00-04:00");
        assertThat(mixed.hourly().airTempC()).isEqualTo(utc.hourly().airTempC());
        assertThat(mixed.rain()).isEqualTo(utc.rain());
    }

    @Test
    void anUnknownUnitLeavesTheLayerOutAndNamesIt() {
        ForecastSeries series = layer("windSpeed", "wmoUnit:km_h-1", "wmoUnit:furlong_fortnight-1");
        assertThat(series.warnings())
                .contains(
                        "windSpeed: unknown unit 'wmoUnit:furlong_fortnight-1', layer left out",
                        "windSpeed: 164 h unknown, assumed 2 m/s at 2 m");
        assertThat(series.hourly().windMps()[5]).isCloseTo(2, within(1e-12));
    }

    @Test
    void otherUnitsAndPrefixesGiveTheSameWeather() {
        ForecastSeries series = with(
                "\"uom\": \"wmoUnit:mm\"",
                "\"uom\": \"unit:in\"",
                "\"value\": 2.54",
                "\"value\": 0.1");
        assertThat(series.rain().amounts())
                .anyMatch(a -> Math.abs(a.amountMm() - 2.54) < 1e-12)
                .anyMatch(a -> Math.abs(a.amountMm() - 4.4 * 25.4) < 1e-9);
        assertThat(with("wmoUnit:degC", "degC").hourly().airTempC()[0]).isBetween(15.0, 29.0);
        assertThat(with("\"uom\": \"wmoUnit:degC\"", "\"uom\": \"wmoUnit:degF\"")
                        .hourly()
                        .airTempC()[0])
                .isCloseTo(
                        (Sky.series(sky.pull(NOW)).hourly().airTempC()[0] - 32) / 1.8,
                        within(1e-9));
    }

    @Test
    void numbersWrittenAsTextAreNumbers() {
        ForecastSeries plain = Sky.series(sky.pull(NOW));
        ForecastSeries text = with("\"value\": 4.4", "\"value\": \"4.4\"");
        assertThat(text.rain()).isEqualTo(plain.rain());
        assertThat(text.warnings()).isEqualTo(plain.warnings());
    }

    @Test
    void nullIsUnknownAndNotZero() {
        ForecastSeries series = with("\"value\": 4.4", "\"value\": null");
        assertThat(rain(series)).isCloseTo(RAIN_AHEAD_MM - 4.4, within(1e-9));
        assertThat(series.rain().amounts())
                .noneMatch(a -> a.window().from().toString().startsWith("2026-07-17T01"));
        assertThat(series.warnings())
                .contains(
                        "quantitativePrecipitation: 1 interval left out, the first because it has no"
                                + " value at 2026-07-17T01:00:00Z");
    }

    @Test
    void notANumberAndWildValuesAreUnknown() {
        for (String bad : new String[] {"NaN", "-3276.8", "99999", "\"M\"", "[1]", "true"}) {
            ForecastSeries series = with("\"value\": 4.4", "\"value\": " + bad);
            assertThat(rain(series)).as(bad).isCloseTo(RAIN_AHEAD_MM - 4.4, within(1e-9));
            assertThat(series.warnings())
                    .as(bad)
                    .anyMatch(w -> w.contains("is not believable at 2026-07-17T01:00:00Z"));
        }
    }

    @Test
    void aWildTemperatureIsBridgedFromItsNeighbours() {
        ForecastSeries plain = Sky.series(sky.pull(NOW));
        double[] before = plain.hourly().airTempC();
        ForecastSeries wild = with(
                "2026-07-15T13:00:00+00:00/PT1H\",\n     \"value\": 18.5",
                "2026-07-15T13:00:00+00:00/PT1H\",\n     \"value\": 4000");
        assertThat(wild.hourly().airTempC()[3])
                .isCloseTo((before[2] + before[4]) / 2, within(1e-9));
        assertThat(wild.warnings())
                .contains("temperature: 1 h missing, filled from their neighbours");
    }

    @Test
    void intervalsOutOfOrderArePutInOrder() {
        ForecastSeries plain = Sky.series(sky.pull(NOW));
        ForecastSeries mixed = with(
                FIRST_RAIN,
                "2026-07-17T99/PT1H\",\n     \"value\": 0",
                SECOND_RAIN,
                FIRST_RAIN,
                "2026-07-17T99/PT1H\",\n     \"value\": 0",
                SECOND_RAIN);
        assertThat(mixed.rain().amounts()).isEqualTo(plain.rain().amounts());
        assertThat(mixed.warnings())
                .contains(
                        "quantitativePrecipitation: its intervals were not in order of time, put in"
                                + " order");
    }

    @Test
    void anOverlapIsLeftOutAndNamed() {
        ForecastSeries series = with(
                "2026-07-17T01:00:00+00:00/PT1H\",\n     \"value\": 4.4",
                "2026-07-17T00:30:00+00:00/PT1H\",\n     \"value\": 4.4");
        assertThat(rain(series)).isCloseTo(RAIN_AHEAD_MM - 4.4, within(1e-9));
        assertThat(series.warnings())
                .contains("quantitativePrecipitation: 1 interval left out, the first because the"
                        + " interval from 2026-07-17T00:30:00Z overlaps");
    }

    @Test
    void emptyLayersAreNamedAndReplacedByStatedRules() {
        ForecastSeries series = layer("dewpoint", "\"values\"", "\"others\"");
        assertThat(series.warnings())
                .contains(
                        "dewpoint: not sent",
                        "dewpoint: 164 h missing, reckoned from relative humidity");
        ForecastSeries dry = sent(Sky.grid().replace("\"skyCover\"", "\"skyCover2\""));
        assertThat(dry.warnings()).contains("skyCover: 164 h unknown, assumed half covered");
        assertThat(dry.hourly().skyCoverFraction()).containsOnly(0.5);
    }

    @Test
    void withoutDewPointAndHumidityTheNightsLowStandsIn() {
        ForecastSeries series = sent(Sky.grid()
                .replace("\"dewpoint\"", "\"dewpoint2\"")
                .replace("\"relativeHumidity\"", "\"humidity2\""));
        assertThat(series.warnings())
                .contains("dewpoint: 164 h unknown, taken as the night's low temperature");
        double low = Arrays.stream(series.hourly().airTempC(), 0, 48).min().orElseThrow();
        assertThat(series.hourly().dewPointC()[20]).isCloseTo(low, within(0.5));
    }

    @Test
    void aLongHoleInTemperatureEndsTheSeriesThere() {
        String grid = Sky.grid();
        for (int hour = 0; hour < 8; hour++) {
            grid = grid.replaceFirst("2026-07-16T0" + hour + ":00:00\\+00:00/PT1H", "gone/PT1H");
        }
        ForecastSeries series = sent(grid);
        assertThat(series.hourly().end()).isEqualTo("2026-07-16T00:00:00Z");
        assertThat(series.warnings())
                .contains("temperature: unknown for more than 6 h, series ends after 14 h");
    }

    @Test
    void anUnreadableTimeOfIssueIsReplacedAndNamed() {
        ForecastSeries series = with("2026-07-15T09:12:00+00:00", "just now");
        assertThat(series.stamp().issuedAt()).isEqualTo(NOW);
        assertThat(series.warnings())
                .contains("updateTime: not readable, the time of the answer stands in for it");
    }

    @Test
    void intervalsComeInEveryFormOfTheStandard() {
        assertThat(Spans.interval("2026-07-15T06:00:00Z/P1DT6H", NOW)
                        .orElseThrow()
                        .length())
                .hasHours(30);
        assertThat(Spans.interval("2026-07-15T06:00:00Z/2026-07-15T07:00:00Z", NOW))
                .isPresent();
        assertThat(Spans.interval("PT3H/2026-07-15T07:00:00Z", NOW)
                        .orElseThrow()
                        .from())
                .isEqualTo("2026-07-15T04:00:00Z");
        assertThat(Spans.interval("NOW/PT1H", NOW).orElseThrow().from()).isEqualTo(NOW);
        assertThat(Spans.interval("2026-07-15T06:00:00+0000/P1W", NOW)
                        .orElseThrow()
                        .length())
                .hasDays(7);
        for (String bad : new String[] {
            "",
            "/",
            "2026-07-15T06:00:00/PT1H",
            "2026-07-15T06:00:00Z/P1M",
            "2026-07-15T06:00:00Z/-PT1H",
            "2026-07-15T06:00:00Z/PT0S",
            "NOW/NOW/PT1H",
            "2026-07-15T06:00:00Z/P9999D",
            "2026-02-30T06:00:00Z/PT1H",
            "2026-07-15T06:00:00Z/PT9999999999999999H"
        }) {
            assertThat(Spans.interval(bad, NOW)).as(bad).isEmpty();
        }
    }

    private static double rain(ForecastSeries series) {
        return series.rain().amounts().stream()
                .mapToDouble(RainAmount::amountMm)
                .sum();
    }

    private ForecastSeries with(String... changes) {
        String grid = Sky.grid();
        for (int i = 0; i < changes.length; i += 2) {
            assertThat(grid).contains(changes[i]);
            grid = grid.replace(changes[i], changes[i + 1]);
        }
        return sent(grid);
    }

    /** Changes one layer only. */
    private ForecastSeries layer(String name, String from, String to) {
        String grid = Sky.grid();
        int start = grid.indexOf("\"" + name + "\"");
        int end = grid.indexOf("\"uom\"", grid.indexOf("\"uom\"", start) + 5);
        end = end < 0 ? grid.length() : end;
        String changed = grid.substring(start, end).replace(from, to);
        return sent(grid.substring(0, start) + changed + grid.substring(end));
    }

    /** Pulled by a client that has nothing kept from before. */
    private static ForecastSeries sent(String grid) {
        try (Sky other = Sky.fair()) {
            other.on(GRID, Sky.json(grid));
            return Sky.series(other.pull(NOW));
        }
    }
}
