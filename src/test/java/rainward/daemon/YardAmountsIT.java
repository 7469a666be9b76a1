package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;

/** What the yard holds and gives out: no more than there is, and the same in both unit systems. */
class YardAmountsIT {

    /** Pound and acre by definition (NIST SP 811, appendix B). */
    private static final double KG_PER_LB = 0.45359237;

    private static final double HA_PER_AC = 0.40468564224;

    @TempDir
    Path home;

    private Desk us = new Desk(Path.of(""), Instant.EPOCH);

    @BeforeEach
    void takeEverythingIn() {
        us = farm("us");
    }

    private Desk farm(String units) {
        Desk desk = new Desk(home.resolve(units), InventedWeather.MONDAY)
                .withSettings(Desk.crew().replace("units = \"us\"", "units = \"" + units + "\""));
        says(desk, "import", "config/demo-fields.geojson");
        for (String kind : new String[] {"soil-tests", "tags", "harvests", "stock"}) {
            says(desk, "enter", kind, "config/demo-records/" + kind + ".csv");
        }
        return desk;
    }

    private static String says(Desk desk, String... words) {
        Desk.Said said = desk.type(words);
        assertThat(said.exitCode()).as(said.err()).isZero();
        return said.out();
    }

    @Test
    void heapOfLimeIsSharedOverTheFields() {
        says(us, "stock", "count", "ag lime", "30000lb");
        Map<String, Double> given = new TreeMap<>();
        double lacking = 0;
        double wanted = 0;
        for (JsonNode field : us.type("spread", "--from-shed", "--json").json()) {
            JsonNode lime = field.path("lime");
            given.merge(lime.path("lime").asText(), lime.path("nowMass").asDouble(0), Double::sum);
            lacking += lime.path("lackingMass").asDouble(0);
        }
        for (JsonNode field : us.type("spread", "--json").json()) {
            wanted += field.path("lime").path("nowMass").asDouble(0);
        }
        assertThat(wanted).isGreaterThan(32_000);
        assertThat(given.get("ag lime")).isCloseTo(30_000, Offset.offset(10.0));
        assertThat(given.get("pelletized lime"))
                .as("which the table of the shed counts")
                .isCloseTo(2_000, Offset.offset(10.0));
        assertThat(lacking).isPositive();
        assertThat(says(us, "spread", "--from-shed")).contains("the shed lacks");
    }

    @Test
    void shedSeederAndBooksHoldTheSameInBothUnitSystems() throws IOException {
        Desk metric = farm("metric");
        for (Desk desk : List.of(us, metric)) {
            says(desk, "done", "MP2", "spread", "--used", "urea=200lb", "--acres", "4.5ac");
        }

        JsonNode pounds = us.type("stock", "--json").json().path("items");
        JsonNode kilograms = metric.type("stock", "--json").json().path("items");
        assertThat(pounds).hasSizeGreaterThan(3).hasSameSizeAs(kilograms);
        for (int i = 0; i < pounds.size(); i++) {
            assertThat(kilograms.get(i).path("item")).isEqualTo(pounds.get(i).path("item"));
            same(pounds.get(i), kilograms.get(i), "onHand", KG_PER_LB, 0.1);
            same(pounds.get(i), kilograms.get(i), "used", KG_PER_LB, 0.1);
        }

        String[] weigh = {
            "seeder",
            "weigh",
            "roller",
            "turnip and",
            "--setting",
            "18",
            "--caught",
            "0.26lb",
            "--width",
            "12ft",
            "--fraction",
            "1/20",
            "--json"
        };
        JsonNode caught = us.type(weigh).json();
        JsonNode caughtMetric = metric.type(weigh).json();
        for (String rate : List.of("trueRate", "wantedRate")) {
            same(caught, caughtMetric, rate, KG_PER_LB / HA_PER_AC, 0.12);
        }
        assertThat(caughtMetric.path("correctedSetting"))
                .isEqualTo(caught.path("correctedSetting"));

        String[] row = ureaOf(us);
        String[] metricRow = ureaOf(metric);
        assertThat(row[5] + " ac, " + row[7] + " lb").isEqualTo("4.500 ac, 200.00 lb");
        same(row[5], metricRow[5], HA_PER_AC, 0.001);
        same(row[7], metricRow[7], KG_PER_LB, 0.01);
        same(row[8], metricRow[8], KG_PER_LB / HA_PER_AC, 0.02);
    }

    /** The row of the exported book of inputs: area is the sixth column, mass and rate follow. */
    private String[] ureaOf(Desk desk) throws IOException {
        Path file = home.resolve("inputs.csv");
        says(desk, "export", "inputs", file.toString());
        return Files.readString(file)
                .lines()
                .filter(line -> line.contains(",urea,"))
                .findFirst()
                .orElseThrow()
                .split(",", -1);
    }

    private static void same(String us, String metric, double factor, double off) {
        assertThat(Double.parseDouble(metric))
                .isCloseTo(Double.parseDouble(us) * factor, Offset.offset(off));
    }

    private static void same(JsonNode us, JsonNode metric, String what, double factor, double off) {
        assertThat(us.path(what).isNumber()).as(us.toString()).isTrue();
        assertThat(metric.path(what).asDouble())
                .as(us + " / " + metric)
                .isCloseTo(us.path(what).asDouble() * factor, Offset.offset(off));
    }
}
