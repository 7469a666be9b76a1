package rainward.feed.past;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.feed.Sky;
import rainward.feed.reading.Unreadable;
import rainward.feed.wire.PoliteClient;
import rainward.feed.wire.Sha256;
import rainward.weather.source.LastGoodCopies.Copy;
import rainward.weather.source.LastGoodCopies.Times;

/** One bad value in each field of each answer about rain that fell: left out and named. */
class RainDoorsTest {

    private static final String HOURS =
            "{\"gridi\":7,\"data\":[{\"end_valid\":\"2026-07-14T01:00:00Z\",\"precip_in\":0.1},"
                    + "{\"end_valid\":%s,\"precip_in\":%s}]}";
    private static final String DAYS = "{\"data\":[[\"2026-07-13\",3.5],[%s,%s]]}";
    private static final String REPORT =
            "{\"properties\":{\"timestamp\":\"2026-07-15T0%d:53:00+00:00\","
                    + "\"temperature\":%s,\"dewpoint\":%s,\"windSpeed\":%s,\"precipitationLastHour\":%s}}";
    private static final String TEMP = value("wmoUnit:degC", "21");
    private static final String DEW = value("wmoUnit:degC", "15");
    private static final String WIND = value("wmoUnit:km_h-1", "9");
    private static final String RAIN = value("wmoUnit:mm", "0.3");

    private static String value(String unit, String value) {
        return "{\"unitCode\":\"" + unit + "\",\"value\":" + value + "}";
    }

    private static RainRows read(PoliteClient.Reader<RainRows> reader, String text)
            throws Unreadable {
        byte[] body = text.getBytes(StandardCharsets.UTF_8);
        return reader.read(
                new Copy("made", Map.of(), body, Sha256.of(body), new Times(Sky.NOW, Sky.NOW)));
    }

    static Stream<String> badAmounts() {
        return Stream.of(
                "NaN", "Infinity", "-0.1", "1e9", "\"x\"", "\"M\"", "true", "{}", "null", "-999");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("badAmounts")
    void badAmountOfAnAnalysisIsLeftOutAndNamed(String bad) throws Unreadable {
        RainRows hours =
                read(RainRows::stageFour, HOURS.formatted("\"2026-07-14T02:00:00Z\"", bad));
        RainRows days = read(RainRows::acis, DAYS.formatted("\"2026-07-14\"", bad));

        assertThat(hours.rain()).hasSize(1).allMatch(r -> Math.abs(r.amountMm() - 2.54) < 1e-9);
        assertThat(hours.notes()).singleElement().asString().startsWith("stage4: 1 entry left out");
        assertThat(days.rain()).hasSize(1).allMatch(r -> r.amountMm() == 3.5);
        assertThat(days.notes()).singleElement().asString().startsWith("acis: 1 entry left out");
    }

    /** The moment of the pull is 2026-07-15 10:20 UTC. */
    @ParameterizedTest(name = "on {0}")
    @CsvSource({"x", "2026-02-30", "''", "2026-07-16", "9999-12-31"})
    void timeThatIsNoneOrStillToComeIsLeftOutAndNamed(String date) throws Unreadable {
        RainRows hours =
                read(RainRows::stageFour, HOURS.formatted("\"" + date + "T02:00:00Z\"", "0.2"));
        RainRows days = read(RainRows::acis, DAYS.formatted("\"" + date + "\"", "4"));

        assertThat(hours.rain()).hasSize(1);
        assertThat(hours.notes()).singleElement().asString().startsWith("stage4: 1 entry left out");
        assertThat(days.rain()).hasSize(1);
        assertThat(days.notes()).singleElement().asString().startsWith("acis: 1 entry left out");
    }

    static Stream<Arguments> badReports() {
        return Stream.of("NaN", "1e9", "-1e9", "\"x\"", "true", "[1]", "Infinity")
                .flatMap(bad -> Stream.of(
                        Arguments.of(
                                "temperature",
                                REPORT.formatted(8, value("wmoUnit:degC", bad), DEW, WIND, RAIN)),
                        Arguments.of(
                                "dewpoint",
                                REPORT.formatted(8, TEMP, value("wmoUnit:degC", bad), WIND, RAIN)),
                        Arguments.of(
                                "windSpeed",
                                REPORT.formatted(8, TEMP, DEW, value("wmoUnit:m_s-1", bad), RAIN)),
                        Arguments.of(
                                "precipitationLastHour",
                                REPORT.formatted(8, TEMP, DEW, WIND, value("wmoUnit:mm", bad)))));
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("badReports")
    void badValueOfAStationIsLeftOutAndNamed(String field, String report) throws Unreadable {
        String fair = REPORT.formatted(7, TEMP, DEW, WIND, RAIN);

        RainRows read = read(RainRows::station, "{\"features\":[" + report + "," + fair + "]}");

        boolean rain = field.startsWith("prec");
        assertThat(read.rain()).hasSize(rain ? 1 : 2);
        assertThat(read.air()).hasSize(rain ? 2 : 1);
        assertThat(read.notes())
                .anyMatch(note -> note.startsWith("station " + field + ": 1 entry left out"));
    }
}
