package rainward.daemon.settings.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Single values changed in a text that people wrote. */
class SettingsTextTest {

    private static final String BEFORE = """
            # ours
            [crew]
            start = "06:30"                     # before the heat
            #overtime = "2 h"                   # "0 s" to "8 h"

            # the big one
            [[machine]]
            name = "roller # 1"   # green
            width = "12 ft"

            # the old one
            [[machine]]
            name = "disk"
            days = [
              "monday",  # slow
              "friday",
            ]

            [[mix]]
            name = "yard"
            [mix.season]
            first = "07-05"
            [[mix.component]]
            species = "rape"

            # what is in the shed
            [shed]
            bag = "50 lb"
            """;

    private final SettingsText text = new SettingsText(BEFORE);

    @Test
    void valueIsChangedInItsPlaceAndAllElseStays() {
        assertThat(text.with("crew.start", "\"07:00\"").text())
                .isEqualTo(BEFORE.replace("\"06:30\"", "\"07:00\""));
        assertThat(text.with("machine[1].name", "\"roller\"").text())
                .contains("name = \"roller\" ")
                .contains("# green");
    }

    @Test
    void valueOverSeveralLinesIsReplacedWhole() {
        String after = text.with("machine[2].days", "[\"monday\"]").text();

        assertThat(after).contains("name = \"disk\"\ndays = [\"monday\"]\n\n[[mix]]");
    }

    @Test
    void keyThatSleepsAsACommentIsPutInForceThere() {
        assertThat(text.with("crew.overtime", "\"1 h\"").text())
                .contains(
                        "overtime = \"1 h\"                    # \"0 s\" to \"8 h\"\n\n# the big");
    }

    @Test
    void newKeyIsPutAfterTheOthersOfItsTable() {
        assertThat(text.with("machine[1].speed", "5").text())
                .contains("width = \"12 ft\"\nspeed = 5\n\n# the old one");
        assertThat(text.with("board.port", "0").text()).endsWith("\n[board]\nport = 0\n");
    }

    @Test
    void entryIsAddedBehindItsLikesWithTheirInnerTables() {
        Map<String, String> entry = new LinkedHashMap<>();
        entry.put("name", "\"firmer\"");
        entry.put("width", "10");

        assertThat(text.plus("machine", entry).text())
                .contains("]\n\n[[machine]]\nname = \"firmer\"\nwidth = 10\n\n[[mix]]");
        assertThat(text.plus("mix[1].component", Map.of("species", "\"turnip\""))
                        .text())
                .contains(
                        "species = \"rape\"\n\n[[mix.component]]\nspecies = \"turnip\"\n\n# what");
        assertThat(text.plus("seed", Map.of("species", "\"rape\"")).text())
                .endsWith("\n\n[[seed]]\nspecies = \"rape\"\n");
    }

    @Test
    void entryIsTakenOutWithItsInnerTablesAndTheNextOneKeepsItsComment() {
        String after = text.without("mix[1]").text();

        assertThat(after).doesNotContain("mix", "rape").contains("# what is in the shed\n[shed]");
        assertThat(text.without("machine[1]").text())
                .doesNotContain("roller")
                .contains("# the old one\n[[machine]]\nname = \"disk\"");
        assertThat(text.without("crew.start").text()).doesNotContain("06:30");
    }

    @Test
    void textThatIsWrittenOtherwiseIsLeftAlone() {
        SettingsText inline = new SettingsText("machine = [{ name = \"a\" }, { name = \"b\" }]\n");

        assertThatThrownBy(() -> inline.with("machine[2].name", "\"c\""))
                .isInstanceOf(SettingsText.CannotChange.class)
                .hasMessageContaining("change it in the text");
        assertThatThrownBy(() -> text.with("crew.start", "\"07:00\"\nend = 3"))
                .isInstanceOf(RuntimeException.class);
    }
}
