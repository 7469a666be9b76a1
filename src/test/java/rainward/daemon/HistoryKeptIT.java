package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;

/** What was written down about fields and the shed survives whatever is done to the fields. */
class HistoryKeptIT {

    private static final String FIELD = "MP2 Long Pond";

    @TempDir
    Path home;

    private Desk desk = new Desk(Path.of(""), Instant.EPOCH);

    @BeforeEach
    void workSomeGround() {
        desk = new Desk(home, InventedWeather.MONDAY).withSettings(Desk.crew());
        says("import", "config/demo-fields.geojson");
        for (String kind : new String[] {"soil-tests", "stock"}) {
            says("enter", kind, "config/demo-records/" + kind + ".csv");
        }
        says("done", "MP2", "spread", "--used", "urea=100lb", "--by", "Tobin");
        says("done", "MP2", "disk");
    }

    private String says(String... words) {
        Desk.Said said = desk.type(words);
        assertThat(said.exitCode()).as(said.err()).isZero();
        return said.out();
    }

    private List<String> journal() throws IOException {
        Path file = home.resolve("journal.csv");
        says("export", "journal", file.toString());
        return List.of(Files.readString(file).split("\r\n"));
    }

    private double urea() {
        for (JsonNode line : desk.type("stock", "--json").json().path("items")) {
            if (line.path("item").asText().equals("urea")) {
                return line.path("onHand").asDouble();
            }
        }
        throw new AssertionError("no urea in the shed");
    }

    private String spread(String field) {
        return desk.type("spread", field, "--json").json().toString();
    }

    @Test
    void importedAgain() throws IOException {
        List<String> before = journal();
        final String spread = spread("MP2");
        final double urea = urea();
        assertThat(before).anyMatch(line -> line.contains("disk"));

        says("import", "config/demo-fields.geojson");

        assertThat(journal()).isEqualTo(before);
        assertThat(spread("MP2")).isEqualTo(spread);
        assertThat(urea()).isEqualTo(urea);
    }

    @Test
    void renamed() throws IOException {
        List<String> before = journal();
        final String spread = spread("MP2");
        final double urea = urea();

        says("rename", "MP2", "Lower Pond");

        assertThat(journal())
                .isEqualTo(before.stream()
                        .map(line -> line.replace(FIELD, "Lower Pond"))
                        .toList());
        assertThat(spread("Lower Pond")).isEqualTo(spread.replace(FIELD, "Lower Pond"));
        assertThat(urea()).isEqualTo(urea);
    }

    @Test
    void undone() throws IOException {
        List<String> before = journal();
        final double urea = urea();

        says("undo", "MP2", "disk");
        says("undo", "MP2", "spread");

        assertThat(journal()).containsAll(before).hasSizeGreaterThan(before.size());
        assertThat(urea()).as("the shed has it back").isEqualTo(urea + 100);
    }

    @Test
    void enteredByMistakeAndTakenBack() throws IOException {
        final double urea = urea();
        Path wrong = Files.writeString(home.resolve("wrong.csv"), """
                item,on,what,lb
                urea,2026-07-12,received,4000
                """);
        says("enter", "stock", wrong.toString());
        assertThat(urea()).isEqualTo(urea + 4_000);

        assertThat(says("enter", "stock", wrong.toString(), "--undo"))
                .contains("1 line of stock taken back, 0 did not stand there.");

        assertThat(urea()).isEqualTo(urea);
        assertThat(says("enter", "stock", wrong.toString(), "--undo"))
                .contains("0 lines of stock taken back, 1 did not stand there.");
        says("enter", "stock", wrong.toString());
        assertThat(urea()).as("and may be entered anew").isEqualTo(urea + 4_000);
    }
}
