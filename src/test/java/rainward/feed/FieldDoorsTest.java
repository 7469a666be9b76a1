package rainward.feed;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.feed.hourly.ReadForecast;
import rainward.feed.nws.GridForecast;
import rainward.feed.point.ColumnForecast;
import rainward.feed.point.MetForecast;
import rainward.feed.reading.Spell;
import rainward.feed.reading.Unreadable;
import rainward.feed.wire.PoliteClient;
import rainward.feed.wire.Sha256;
import rainward.weather.source.LastGoodCopies.Copy;
import rainward.weather.source.LastGoodCopies.Times;

/**
 * One bad value in each field of each forecast service: it never comes through the door, and the
 * user is told which field it was in.
 */
class FieldDoorsTest {

    static final JsonMapper JSON = JsonMapper.builder(JsonFactory.builder()
                    .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
                    .disable(JsonWriteFeature.WRITE_NAN_AS_STRINGS)
                    .build())
            .build();

    /** Values that no field may have; what is written between bars is the JSON. */
    static final List<String> BAD =
            List.of("NaN", "Infinity", "1e9", "-1e9", "\"x\"", "\"NaN\"", "true", "{}", "[1]");

    /** A field of a service: where its values stand and where they are read to. */
    record Door(
            Service service,
            String field,
            double least,
            double most,
            Function<ReadForecast, List<Spell>> layer) {

        @Override
        public String toString() {
            return service + " " + field;
        }
    }

    enum Service {
        NWS("nws-grid.json", copy -> GridForecast.read(copy).forecast()) {
            @Override
            ObjectNode holder(JsonNode root, String field) {
                return (ObjectNode) root.at("/properties/" + field + "/values/1");
            }

            @Override
            void put(JsonNode root, String field, JsonNode bad) {
                holder(root, field).set("value", bad);
            }
        },
        MET("met-complete.json", MetForecast::read) {
            @Override
            ObjectNode holder(JsonNode root, String field) {
                boolean ahead = field.startsWith("prec") || field.startsWith("prob");
                return (ObjectNode) root.at("/properties/timeseries/3/data/"
                        + (ahead ? "next_1_hours" : "instant") + "/details");
            }

            @Override
            void put(JsonNode root, String field, JsonNode bad) {
                holder(root, field).set(field, bad);
            }
        },
        OPEN_METEO("open-meteo.json", ColumnForecast::read) {
            @Override
            ObjectNode holder(JsonNode root, String field) {
                return (ObjectNode) root.at("/hourly");
            }

            @Override
            void put(JsonNode root, String field, JsonNode bad) {
                ((ArrayNode) holder(root, field).path(field)).set(30, bad);
            }
        };

        final String fixture;
        final PoliteClient.Reader<ReadForecast> reader;

        Service(String fixture, PoliteClient.Reader<ReadForecast> reader) {
            this.fixture = fixture;
            this.reader = reader;
        }

        abstract ObjectNode holder(JsonNode root, String field);

        abstract void put(JsonNode root, String field, JsonNode bad);

        JsonNode fair() {
            return parsed(Sky.fixture(fixture));
        }

        ReadForecast read(JsonNode root) throws Unreadable {
            return reader.read(copy(root));
        }
    }

    static JsonNode parsed(String text) {
        try {
            return JSON.readTree(text);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException(text, e);
        }
    }

    static Copy copy(JsonNode root) {
        byte[] body = root.toString().getBytes(java.nio.charset.StandardCharsets.UTF_8);
        return new Copy("made", Map.of(), body, Sha256.of(body), new Times(Sky.NOW, Sky.NOW));
    }

    static Stream<Door> doors() {
        List<Door> doors = new ArrayList<>();
        air(
                doors,
                Service.NWS,
                "temperature",
                "dewpoint",
                "relativeHumidity",
                "windSpeed",
                "skyCover");
        air(
                doors,
                Service.MET,
                "air_temperature",
                "dew_point_temperature",
                "relative_humidity",
                "wind_speed",
                "cloud_area_fraction");
        air(
                doors,
                Service.OPEN_METEO,
                "temperature_2m",
                "dew_point_2m",
                "relative_humidity_2m",
                "wind_speed_10m",
                "cloud_cover");
        rain(doors, Service.NWS, "quantitativePrecipitation", "probabilityOfPrecipitation");
        rain(doors, Service.MET, "precipitation_amount", "probability_of_precipitation");
        rain(doors, Service.OPEN_METEO, "precipitation", "precipitation_probability");
        return doors.stream();
    }

    private static void air(List<Door> doors, Service service, String... names) {
        doors.add(new Door(service, names[0], -60, 60, f -> f.air().airTempC()));
        doors.add(new Door(service, names[1], -80, 40, f -> f.air().dewPointC()));
        doors.add(new Door(service, names[2], 0, 1, f -> f.air().humidityFraction()));
        doors.add(new Door(service, names[3], 0, 100, f -> f.air().wind10Mps()));
        doors.add(new Door(service, names[4], 0, 1, f -> f.air().skyCoverFraction()));
    }

    private static void rain(List<Door> doors, Service service, String amount, String chance) {
        doors.add(new Door(service, amount, 0, 500, f -> f.rain().amountsMm()));
        doors.add(new Door(service, chance, 0, 1, f -> f.rain().chances()));
    }

    static Stream<Arguments> badValues() {
        return doors().flatMap(door -> BAD.stream().map(bad -> Arguments.of(door, bad)));
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("badValues")
    void badValueStaysOutsideAndIsNamed(Door door, String bad) throws Unreadable {
        JsonNode root = door.service().fair();
        door.service().put(root, door.field(), parsed(bad));

        ReadForecast read = door.service().read(root);

        assertSound(door, read);
        assertThat(read.notes())
                .anyMatch(note -> note.startsWith(door.field() + ": 1 interval left out")
                        && note.contains("is not believable"));
    }

    /** Absent, null and zero are three things: none of the first two becomes the third. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("doors")
    void nullIsUnknownAndTheRestIsAsBefore(Door door) throws Unreadable {
        JsonNode root = door.service().fair();
        List<Spell> before = door.layer().apply(door.service().read(root));
        door.service().put(root, door.field(), JSON.nullNode());

        ReadForecast read = door.service().read(root);

        assertSound(door, read);
        double least = before.stream().mapToDouble(Spell::value).min().orElse(0);
        assertThat(door.layer().apply(read)).allMatch(spell -> spell.value() >= least);
    }

    static void assertSound(Door door, ReadForecast read) {
        List<Spell> layer = door.layer().apply(read);
        assertThat(layer)
                .allMatch(spell -> spell.value() >= door.least() && spell.value() <= door.most());
        for (int i = 1; i < layer.size(); i++) {
            assertThat(layer.get(i).window().from())
                    .isAfterOrEqualTo(layer.get(i - 1).window().to());
        }
    }

    static Stream<Arguments> badIntervals() {
        return doors().filter(door -> door.service() == Service.NWS)
                .flatMap(door -> Stream.of(
                                "2026-07-15T12:00:00+00:00/2026-07-15T11:00:00+00:00",
                                "2026-07-15T12:00:00+00:00/PT0S",
                                "2026-07-15T12:00:00+00:00/-PT1H",
                                "2026-07-15T12:00:00+00:00/P3M",
                                "2026-07-15T12:00:00/PT1H",
                                "2026-02-30T12:00:00+00:00/PT1H",
                                "undefined/PT1H",
                                "")
                        .map(interval -> Arguments.of(door, interval)));
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("badIntervals")
    void reversedEmptyOrEndlessIntervalIsNamed(Door door, String interval) throws Unreadable {
        JsonNode root = door.service().fair();
        Service.NWS.holder(root, door.field()).put("validTime", interval);

        ReadForecast read = Service.NWS.read(root);

        assertSound(door, read);
        assertThat(read.notes())
                .contains(door.field() + ": 1 interval left out, the first because '" + interval
                        + "' is not a time interval");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("doors")
    void overlapCountsOnceAndAGapStaysOne(Door door) throws Unreadable {
        JsonNode root = door.service().fair();
        List<Spell> fair = door.layer().apply(door.service().read(root));
        if (door.service() == Service.NWS) {
            ArrayNode values = (ArrayNode) root.at("/properties/" + door.field() + "/values");
            values.add(values.get(1).deepCopy());
            ReadForecast twice = Service.NWS.read(root);
            assertThat(door.layer().apply(twice)).isEqualTo(fair);
            assertThat(twice.notes())
                    .anyMatch(n -> n.startsWith(door.field()) && n.contains("overlap"));
            values.remove(values.size() - 1);
            values.remove(1);
            assertThat(door.layer().apply(Service.NWS.read(root))).hasSize(fair.size() - 1);
        } else if (door.service() == Service.MET) {
            ArrayNode steps = (ArrayNode) root.at("/properties/timeseries");
            steps.add(steps.get(3).deepCopy());
            ReadForecast twice = Service.MET.read(root);
            assertSound(door, twice);
            assertThat(door.layer().apply(twice)).isEqualTo(fair);
        } else {
            ((ArrayNode) root.at("/hourly/time")).set(30, root.at("/hourly/time/31"));
            ReadForecast twice = Service.OPEN_METEO.read(root);
            assertSound(door, twice);
        }
    }

    static Stream<Arguments> badTimes() {
        return Stream.of(
                        "\"x\"",
                        "null",
                        "1e30",
                        "99999999999999999",
                        "-99999999999999999",
                        "29999999999999999",
                        "{}")
                .flatMap(time -> Stream.of(
                        Arguments.of(Service.MET, "/properties/timeseries/3", time),
                        Arguments.of(Service.OPEN_METEO, "/hourly/time", time)));
    }

    @ParameterizedTest(name = "{0}: {2}")
    @MethodSource("badTimes")
    void timeThatIsNoneLeavesASoundForecast(Service service, String path, String time)
            throws Unreadable {
        JsonNode root = service.fair();
        if (root.at(path) instanceof ArrayNode times) {
            times.set(30, parsed(time));
        } else {
            ((ObjectNode) root.at(path)).set("time", parsed(time));
        }

        ReadForecast read = service.read(root);

        doors().filter(d -> d.service() == service).forEach(door -> assertSound(door, read));
        var place =
                new ReadForecast.Place(rainward.feed.terms.Service.MET_NORWAY, Sky.FARM, Sky.NOW);
        assertThat(read.series(place, Sky.NOW, List.of())).isPresent();
    }
}
