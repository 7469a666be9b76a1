package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;

/** The demo crew's season on one field, by commands alone. */
class SeasonPlayIT {

    private static final String FIELD = "MP2 Long Pond";
    private static final Instant MONDAY = InventedWeather.MONDAY;

    @TempDir
    Path home;

    private final InventedWeather weather = new InventedWeather();
    private Desk desk = new Desk(Path.of(""), Instant.EPOCH);

    @BeforeEach
    void takeEverythingIn() {
        desk = new Desk(home, MONDAY).withWeatherFrom(weather.address(), """

                [order]
                thinking = "1 s"
                """);
        says("import", "config/demo-fields.geojson");
        says("pull");
        for (String kind : new String[] {"soil-tests", "tags", "harvests", "stock"}) {
            says("enter", kind, "config/demo-records/" + kind + ".csv");
        }
    }

    @AfterEach
    void stop() {
        weather.close();
    }

    private String says(String... words) {
        Desk.Said said = desk.type(words);
        assertThat(said.exitCode()).as(said.err()).isZero();
        return said.out();
    }

    private JsonNode told(String... words) {
        Desk.Said said = desk.type(words);
        assertThat(said.exitCode()).as(said.err()).isZero();
        return said.json();
    }

    private void at(Duration later) {
        desk = desk.at(MONDAY.plus(later));
    }

    private double inShed(String item) {
        for (JsonNode line : told("stock", "--json").path("items")) {
            if (line.path("item").asText().equals(item)) {
                return line.path("onHand").asDouble();
            }
        }
        throw new AssertionError("nothing of " + item);
    }

    private void seedItAgain(Duration when, String mix) {
        at(when);
        says("done", "MP2", "spread", "--used", "urea=0lb");
        says("done", "MP2", "disk");
        says("done", "MP2", "till");
        says("done", "MP2", "seed", "--mix", mix, "--as-reckoned", "--by", "Ruth");
    }

    @Test
    void seasonIsPlayedThroughByCommandsAlone() throws IOException {
        // What goes on the trucks: fills at the boxes, bags, and no setting on record yet.
        desk.type(
                "brief", "--send"); // Nobody takes mail here; the order is given out all the same.
        JsonNode load = told("load", "--json");
        assertThat(load.path("totals").findValuesAsText("what")).contains("ag lime", "turnip");
        assertThat(load.toString()).contains("no setting on record for");
        assertThat(load.findValues("fills").toString()).contains("\"emptied\"");

        // A wrong setting, caught and put right; the next day starts from it.
        says(
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
                "1/20");
        JsonNode start = told("seeder", "set", "roller", "turnip and", "--json");
        assertThat(start.path("sureness").asText()).isEqualTo("same_mix");
        assertThat(start.path("setting").asDouble()).isBetween(11.9, 12.1);

        paperStartsEachMixAtItsOwnSetting();

        // Stages with what was really used; undoing gives the shed its urea back.
        final double urea = inShed("urea");
        says("done", "MP2", "spread", "--as-reckoned", "--acres", "5.1ac", "--by", "Tobin");
        assertThat(inShed("urea")).isLessThan(urea);
        says("undo", "MP2", "spread");
        assertThat(inShed("urea")).isEqualTo(urea);
        says("done", "MP2", "spread", "--as-reckoned", "--by", "Tobin");
        says("done", "MP2", "disk");
        says("done", "MP2", "till");
        at(Duration.ofHours(6));

        // The box check finds the seeder a third heavy.
        JsonNode check = told(
                "seeder",
                "check",
                "roller",
                "MP2",
                "--sown",
                "2ac",
                "--filled",
                "36lb",
                "--left",
                "26.9lb",
                "--setting",
                "12",
                "--json");
        assertThat(check.path("verdict").asText()).isEqualTo("heavy");
        assertThat(check.path("correctedSetting").asDouble()).isBetween(8.9, 9.4);

        final double turnip = inShed("turnip");
        says("done", "MP2", "seed", "--used", "turnip=8lb", "--used", "rape=12lb", "--by", "Ruth");
        assertThat(inShed("turnip")).isEqualTo(turnip - 8);

        // It fails, is sown again and stands.
        at(Duration.ofDays(3));
        JsonNode failed = told(
                "count",
                "MP2",
                "--ring",
                "28.26in",
                "--plants",
                "2,0,1,3,0,1",
                "--write",
                "--cause",
                "washed",
                "--json");
        assertThat(failed.path("verdict").asText()).isEqualTo("failed");
        assertThat(failed.path("words").asText()).contains("back in the order");
        assertThat(failed.path("next").findValuesAsText("mix"))
                .hasSizeGreaterThan(1)
                .doesNotHaveDuplicates()
                .endsWith("rye wheat and oats");
        JsonNode season = told("season", "--json");
        assertThat(season.path("mixes").findValuesAsText("failed")).contains("5.1");

        seedItAgain(Duration.ofDays(4), "three brassicas");
        at(Duration.ofDays(13));
        assertThat(says("stand", "MP2", "up", "--counted", "42%")).contains("up.");

        // History outlives another import and another name.
        says("import", "config/demo-fields.geojson");
        says("rename", "MP2", "Lower Pond");
        assertThat(says("season")).contains("turnip and rape");

        reportTellsBothSeedings();
        exportsAreWhatTheStandardsSay();
    }

    private void reportTellsBothSeedings() throws IOException {
        assertThat(report())
                .contains("Lower Pond", "failed (washed)", "three brassicas", "again")
                .contains("Seeded a second time: 1", "turnip 8 lb", "pH")
                .doesNotContain(FIELD);
    }

    private void paperStartsEachMixAtItsOwnSetting() throws IOException {
        Path paper = home.resolve("load.pdf");
        says("load", "--print", paper.toString());
        Set<String> started = new TreeSet<>();
        Matcher start =
                Pattern.compile("Start at setting [0-9.]+ for ([a-z ]+):").matcher(words(paper));
        while (start.find()) {
            started.add(start.group(1));
        }
        Set<String> filled = new TreeSet<>();
        told("load", "--json")
                .findValues("fills")
                .forEach(fills -> fills.forEach(f -> filled.add(f.path("mix").asText())));
        assertThat(started).hasSizeGreaterThan(1).isEqualTo(filled);
    }

    /** The words of the report that the landowner of Mill Pond gets. */
    private String report() throws IOException {
        Path report = home.resolve("mill-pond.pdf");
        says("export", "report", report.toString(), "--property", "Mill Pond");
        return words(report);
    }

    private static String words(Path pdf) throws IOException {
        try (PdfReader reader = new PdfReader(Files.readAllBytes(pdf))) {
            StringBuilder text = new StringBuilder();
            PdfTextExtractor pages = new PdfTextExtractor(reader);
            for (int page = 1; page <= reader.getNumberOfPages(); page++) {
                text.append(pages.getTextFromPage(page)).append('\n');
            }
            return text.toString().replaceAll("\\s+", " ");
        }
    }

    @Test
    void rainAfterASeedingIsToldLongAfterItAndNeverMadeUp() throws IOException {
        for (String stage : new String[] {"spread", "disk", "till", "seed"}) {
            says("done", "MP2", stage);
        }
        at(Duration.ofDays(4));
        says("rain", "Mill Pond", "1.3in", "--since", "2026-07-15 06:00");
        at(Duration.ofDays(120));

        assertThat(report()).contains("1.3 in on 2 of 30 days");
        Path fields = home.resolve("fields.csv");
        says("export", "fields", fields.toString());
        assertThat(Files.readString(fields)).contains(",1.30,30,2,");

        for (String stage : new String[] {"spread", "disk", "till", "seed"}) {
            says("done", "MP5", stage, "--at", "2026-09-01 09:00");
        }
        assertThat(report()).contains("not known").doesNotContain("0 in ");
    }

    private void exportsAreWhatTheStandardsSay() throws IOException {
        Path map = home.resolve("fields.geojson");
        says("export", "map", map.toString());
        JsonNode layer = new ObjectMapper().readTree(map.toFile());
        assertThat(layer.path("features")).hasSize(36);
        JsonNode ring = layer.path("features")
                .path(0)
                .path("geometry")
                .path("coordinates")
                .path(0);
        assertThat(ring.get(0)).as("RFC 7946, 3.1.6: closed").isEqualTo(ring.get(ring.size() - 1));

        Path journal = home.resolve("journal.csv");
        says("export", "journal", journal.toString());
        String lines = Files.readString(journal);
        assertThat(lines).contains("undone", "stand failed", "\r\n");
        assertThat(lines.split("\r\n")).allMatch(line -> !line.contains("\n"));
    }

    @Test
    void tagThatNobodyReadIsAskedForAndNotGuessed() {
        Desk bare = new Desk(home.resolve("bare"), MONDAY).withSettings(Desk.crew());
        bare.type("import", "config/demo-fields.geojson");

        Desk.Said refused = bare.type("seeder", "set", "roller", "turnip and");

        assertThat(refused.exitCode()).isEqualTo(2);
        assertThat(refused.err()).contains("no seed tag", "read purity, germination and coating");
        assertThat(bare.type("spread", "MP2", "--json").json().toString())
                .contains("no soil test", "\"lime\":null");
    }

    @Test
    void shedIsSharedOverTheFieldsInTheOrderOfTheWork() {
        says("stock", "count", "urea", "400lb");
        says("pin", "MP5");
        desk.type("brief", "--send");
        JsonNode all = told("spread", "--from-shed", "--json");

        double sum = 0;
        double first = 0;
        double wanted = 0;
        for (JsonNode field : all) {
            for (JsonNode product : field.path("products")) {
                if (product.path("product").asText().equals("urea")) {
                    sum += product.path("mass").asDouble();
                    first += field.path("field").asText().startsWith("MP5")
                            ? product.path("mass").asDouble()
                            : 0;
                }
            }
        }
        for (JsonNode product : told("spread", "MP5", "--json").path(0).path("products")) {
            wanted += product.path("product").asText().equals("urea")
                    ? product.path("mass").asDouble()
                    : 0;
        }
        assertThat(sum).as("no more than there is").isBetween(390.0, 400.5);
        assertThat(first).as("all of it to the field that is spread first").isGreaterThan(390);
        assertThat(wanted).isGreaterThan(first);
    }

    /** Acre, pound and foot by definition, to the decimals that are printed. */
    @Test
    void usAndMetricSheetsCarryTheSameAmounts() {
        desk.type("brief", "--send");
        JsonNode us = told("spread", "--units", "us", "--json");
        JsonNode metric = told("spread", "--units", "metric", "--json");
        assertThat(us).hasSize(36).hasSameSizeAs(metric);
        for (int i = 0; i < us.size(); i++) {
            same(us.get(i), metric.get(i), "area", 0.40468564224, 0.01);
            for (int k = 0; k < us.get(i).path("products").size(); k++) {
                JsonNode one = us.get(i).path("products").get(k);
                JsonNode other = metric.get(i).path("products").get(k);
                assertThat(other.path("product")).isEqualTo(one.path("product"));
                same(one, other, "mass", 0.45359237, 0.1);
                same(one, other, "rate", 1.12085116, 0.12);
            }
        }
        JsonNode usLoad = told("load", "--units", "us", "--json").path("totals");
        JsonNode metricLoad = told("load", "--units", "metric", "--json").path("totals");
        assertThat(usLoad).isNotEmpty().hasSameSizeAs(metricLoad);
        for (int i = 0; i < usLoad.size(); i++) {
            same(usLoad.get(i), metricLoad.get(i), "need", 0.45359237, 0.1);
            same(usLoad.get(i), metricLoad.get(i), "spare", 0.45359237, 0.1);
        }
    }

    private static void same(JsonNode us, JsonNode metric, String what, double factor, double off) {
        assertThat(us.path(what).isNumber()).as(us.toString()).isTrue();
        assertThat(metric.path(what).asDouble())
                .as(us + " / " + metric)
                .isCloseTo(us.path(what).asDouble() * factor, Offset.offset(off));
    }

    /** Seeds a field in the hour of the order or later, and tells whether its chance was kept. */
    private boolean keepsChance(JsonNode planned, String mix, Duration later) {
        String field = planned.path("field").asText();
        Instant at = OffsetDateTime.parse(planned.path("start").asText()).toInstant();
        Set<String> before = new LinkedHashSet<>();
        for (JsonNode item : told("order", "--json").path("items")) {
            if (item.path("field").asText().equals(field)) {
                before.add(item.path("stage").asText());
            }
        }
        before.remove("seed");
        desk = desk.at(at.plus(later));
        before.forEach(stage -> says("done", field, stage));
        says("done", field, "seed", "--mix", mix);
        desk = desk.at(at.plus(later).plus(Duration.ofDays(9)));
        return !told("stand", field, "up", "--json").path("chanceAtSeeding").isNull();
    }

    @Test
    void chanceIsKeptOfThisMixAndHourAndOfNoOther() {
        desk.type("brief", "--send");
        String brief = says("brief").replaceAll("\\s+", " ");
        List<JsonNode> seedings = new ArrayList<>();
        for (JsonNode item : told("order", "--json").path("items")) {
            if (item.path("stage").asText().equals("seed")) {
                seedings.add(item);
            }
        }

        assertThat(keepsChance(seedings.get(0), mix(brief, seedings.get(0)), Duration.ofHours(3)))
                .isTrue();
        assertThat(keepsChance(seedings.get(1), "kale and radish", Duration.ZERO))
                .as("not %s", mix(brief, seedings.get(1)))
                .isFalse();
        assertThat(keepsChance(seedings.get(2), mix(brief, seedings.get(2)), Duration.ofDays(2)))
                .as("two days later")
                .isFalse();
        assertThat(says("skill")).contains("Our chance of a stand against 1 stand checks");
    }

    /** The mix that the brief names in the line of a seeding. */
    private static String mix(String brief, JsonNode seeding) {
        Matcher line = Pattern.compile(
                        "seed: ([a-z ]+), " + seeding.path("field").asText())
                .matcher(brief);
        assertThat(line.find()).as(brief).isTrue();
        return line.group(1);
    }

    @Test
    void sprayWithoutItsLabelsIntervalIsNeverGuessed() throws IOException {
        Path sprays = Files.writeString(home.resolve("sprays.csv"), """
                field,product,crop,on,label_days
                %s,a burn-down,turnip,2026-07-01,
                """.formatted(FIELD));
        says("enter", "sprays", sprays.toString());
        says("done", "MP2", "spread", "--by", "Tobin");
        says("done", "MP2", "disk");
        says("done", "MP2", "till");
        says("pin", "MP2");

        assertThat(told("load", "--json").path("gaps").toString())
                .contains("plant-back interval for turnip is not known", "read it from the label");
    }

    @Test
    void faultyTableIsRefusedWholeWithEveryFault() throws IOException {
        Path tags = Files.writeString(home.resolve("tags.csv"), """
                species,lot,purity_percent,germination_percent,on
                turnipp,A,99,90,2026-04-01
                rape,B,140,90,April
                """);

        Desk.Said said = desk.type("enter", "tags", tags.toString());

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err())
                .contains("line 2", "\"turnipp\" is not known", "the nearest is \"turnip\"")
                .contains("line 3", "purity_percent = \"140\"", "on = \"April\"");
    }
}
