package rainward.daemon.board.form;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.board.house.Entry;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.office.SurveyDesk;
import rainward.daemon.settings.Settings;
import rainward.daemon.word.WishDesk;
import rainward.farm.Machine;
import rainward.farm.Mix;
import rainward.farm.Person;
import rainward.farm.Recipe;
import rainward.farm.Stage;

/** Entries of the commented example file, changed by form. */
class EntryDeskIT {

    @TempDir
    Path home;

    private Path file;
    private String before;
    private Office office;
    private EntryDesk desk;

    @BeforeEach
    void open() throws IOException {
        file = home.resolve("rainward.toml");
        before = Files.readString(Path.of("config", "rainward.toml"));
        Files.writeString(file, before);
        office = Office.open(
                new HomeFolder(home),
                Office.settings(file, Map.of()).settings(),
                () -> Instant.parse("2026-07-13T09:00:00Z"));
        desk = new EntryDesk(office);
    }

    @AfterEach
    void close() {
        office.close();
    }

    /** The boxes as a browser sends them, with a few filled otherwise. */
    private Map<String, String> parts(String kind, String name, String... changes) {
        Optional<String> named = Optional.of(name).filter(n -> !n.isEmpty());
        Entry form = desk.form(kind, named).orElseThrow();
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put("kind@entry", kind);
        named.ifPresent(n -> parts.put("name@entry", n));
        for (Entry.Item item : form.items()) {
            parts.put("was." + item.key(), item.was());
            item.boxes().stream()
                    .filter(box -> !box.value().isEmpty())
                    .forEach(box -> parts.put(box.name(), box.value()));
        }
        for (int i = 0; i < changes.length; i += 2) {
            parts.put(changes[i], changes[i + 1]);
        }
        return parts;
    }

    /** A mix of one seed that is not there yet. */
    private Map<String, String> yardMix() {
        return parts(
                "mix",
                "",
                "name",
                "yard mix",
                "depth",
                "0.5 in",
                "stand_target",
                "35 %",
                "season.first_sowing",
                "07-05",
                "season.last_sowing",
                "08-15",
                "season.full_worth_until",
                "08-05",
                "season.last_emergence",
                "08-31",
                "component.0.species",
                "turnip",
                "component.0.drilled",
                "1.5 lb/ac",
                "component.0.broadcast",
                "2.5 lb/ac");
    }

    private List<String> changedLines() throws IOException {
        List<String> fresh = new ArrayList<>(Files.readAllLines(file));
        before.lines().forEach(fresh::remove);
        return fresh;
    }

    private Machine seeder() {
        return office.settings().work().crew().machines().get(0);
    }

    @Test
    void formThatIsSentAsItWasDrawnChangesNothing() throws IOException {
        for (Entry.Group group : desk.groups()) {
            List<String> names = group.single() ? List.of("") : List.copyOf(group.names());
            for (String name : names) {
                assertThat(desk.keep(parts(group.kind(), name))).isEqualTo("Nothing was changed.");
            }
        }
        assertThat(file).hasContent(before);
    }

    @Test
    void absenceHoldsAtOnceAndTheCommentsStay() throws IOException {
        String words = desk.keep(
                parts("person", "Dell", "away.0.from", "2026-07-25", "away.0.to", "2026-07-26"));

        assertThat(words).contains("hold from now on");
        assertThat(changedLines())
                .singleElement()
                .satisfies(line -> assertThat(line)
                        .startsWith("away = [{ from = 2026-07-25, to = 2026-07-26 }]")
                        .endsWith("# both days included; left out: never"));
        Person dell = office.settings().work().crew().people().get(0);
        assertThat(dell.absences()).hasSize(1);
        assertThat(home.resolve("rainward.before.toml")).hasContent(before);
    }

    @Test
    void amountsKeepTheirUnitsAndNumbersStayNumbers() throws IOException {
        desk.keep(parts(
                "machine",
                "roller seeder",
                "width",
                "15 ft",
                "efficiency",
                ".7",
                "weight",
                "heavy",
                "operations.0",
                "seed"));

        assertThat(changedLines())
                .containsExactly(
                        "width = \"15 ft\"                     # 1 ft to 197 ft (0.3 m to 60 m)",
                        "efficiency = 0.7                    # 0.05 to 1",
                        "weight = \"heavy\"                    # \"light\", \"medium\" or \"heavy\" on"
                                + " wet ground; left out \"medium\"");
        assertThat(seeder().massClass()).isEqualTo(Machine.MassClass.HEAVY);
    }

    @Test
    void faultIsNamedByItsLabelAndNothingIsWritten() {
        assertThatThrownBy(() -> desk.keep(
                        parts("machine", "roller seeder", "width", "900 ft", "turn", "soon")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("Working width = \"900 ft\"; must be")
                .hasMessageContaining("A turn at the headland takes = \"soon\"; must be");
        assertThat(file).hasContent(before);
        assertThat(home.resolve("rainward.new.toml")).doesNotExist();
    }

    @Test
    void twoWhoChangeOneEntryAreBothKeptOrOneIsTold() {
        Map<String, String> wider = parts("machine", "roller seeder", "width", "15 ft");
        Map<String, String> faster = parts("machine", "roller seeder", "speed", "5 mph");
        Map<String, String> narrower = parts("machine", "roller seeder", "width", "10 ft");

        desk.keep(wider);
        desk.keep(faster);

        assertThat(seeder().work().speedKmh()).isBetween(8.0, 8.1);
        assertThatThrownBy(() -> desk.keep(narrower))
                .hasMessageContaining("Working width was changed meanwhile, to '15 ft'");
        assertThat(seeder().work().widthM()).isBetween(4.5, 4.6);
    }

    @Test
    void mixIsAddedChangedAndTakenOut() throws IOException {
        Map<String, String> mix = yardMix();
        mix.putAll(Map.of(
                "component.1.species", "rape",
                "component.1.drilled", "2 lb/ac",
                "component.1.broadcast", "3 lb/ac"));
        desk.keep(mix);
        Mix added = Objects.requireNonNull(office.mixes().get("yard mix"));
        assertThat(added.components()).hasSize(2);

        desk.keep(parts(
                "mix",
                "yard mix",
                "component.0.species",
                "",
                "component.0.drilled",
                "",
                "component.0.broadcast",
                "",
                "season.last_sowing",
                "08-20"));
        Mix changed = Objects.requireNonNull(office.mixes().get("yard mix"));
        assertThat(changed.components())
                .singleElement()
                .satisfies(c -> assertThat(c.species().name()).isEqualTo("rape"));

        desk.takeOut(Map.of("kind@entry", "mix", "name@entry", "yard mix"));
        assertThat(office.mixes()).doesNotContainKey("yard mix");
        assertThat(changedLines()).allMatch(String::isBlank);
    }

    @Test
    void mixThatAFieldIsToBeSownWithIsNotTakenOut() throws IOException {
        new SurveyDesk(office).take(Path.of("config", "demo-fields.geojson"));
        desk.keep(yardMix());
        office.store()
                .inTransaction(books -> new WishDesk(office)
                        .take(
                                books,
                                new WishDesk.Said(
                                        "KL4",
                                        Optional.empty(),
                                        Optional.empty(),
                                        Optional.empty(),
                                        Optional.of("yard mix"))));

        assertThatThrownBy(
                        () -> desk.takeOut(Map.of("kind@entry", "mix", "name@entry", "yard mix")))
                .hasMessageContaining("KL4 Point is to be sown with yard mix; give it another");
        assertThat(office.mixes()).containsKey("yard mix");
    }

    @Test
    void machineThatSomebodyRunsIsNotTakenOut() {
        assertThatThrownBy(() ->
                        desk.takeOut(Map.of("kind@entry", "machine", "name@entry", "disk tractor")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("there is no machine \"disk tractor\"");
        assertThat(file).hasContent(before);
    }

    @Test
    void recipeGetsAStageAndLosesItAgain() throws IOException {
        desk.keep(parts(
                "recipe", "worked ground", "stage.2.name", "roll", "stage.2.operation", "firm"));
        assertThat(recipe("worked ground").stages())
                .extracting(Stage::name)
                .containsExactly("till", "seed", "roll");

        desk.keep(parts("recipe", "worked ground", "stage.2.name", "", "stage.2.operation", ""));
        assertThat(recipe("worked ground").stages())
                .extracting(Stage::name)
                .containsExactly("till", "seed");
        assertThat(changedLines()).allMatch(String::isBlank);
    }

    @Test
    void stageIsPutBetweenOthersAndMovedWithItsComments() throws IOException {
        desk.keep(parts(
                "recipe",
                "full",
                "stage.5.place",
                "4",
                "stage.5.name",
                "roll",
                "stage.5.operation",
                "firm"));
        assertThat(stages("full"))
                .containsExactly("spray", "spread", "disk", "roll", "till", "seed");
        assertThat(changedLines())
                .filteredOn(line -> !line.isBlank())
                .containsExactlyInAnyOrder(
                        "[[recipe.stage]]", "name = \"roll\"", "operation = \"firm\"");

        desk.keep(parts("recipe", "full", "stage.0.place", "3"));
        assertThat(stages("full"))
                .containsExactly("spread", "disk", "spray", "roll", "till", "seed");
        List<String> lines = Files.readAllLines(file);
        int spray = lines.indexOf("name = \"spray\"");
        assertThat(lines.get(spray + 2))
                .isEqualTo(before.lines()
                        .filter(line -> line.contains("# 0.4 mph to 67 mph"))
                        .findFirst()
                        .orElseThrow());

        desk.keep(parts(
                "recipe",
                "full",
                "stage.2.place",
                "1",
                "stage.3.name",
                "",
                "stage.3.operation",
                ""));
        assertThat(stages("full")).containsExactly("spray", "spread", "disk", "till", "seed");
        assertThat(Files.readAllLines(file).stream().filter(line -> !line.isBlank()))
                .containsExactlyElementsOf(
                        before.lines().filter(line -> !line.isBlank()).toList());
    }

    private List<String> stages(String recipe) {
        return recipe(recipe).stages().stream().map(Stage::name).toList();
    }

    @Test
    void placeThatIsNoneOrWantedTwiceIsRefused() {
        assertThatThrownBy(() -> desk.keep(
                        parts("recipe", "full", "stage.0.place", "3", "stage.1.place", "3")))
                .hasMessageContaining(
                        "Stages, from stubble to seed 1 and 2 are both wanted at" + " place 3");
        assertThatThrownBy(() -> desk.keep(parts("recipe", "full", "stage.0.place", "last")))
                .hasMessageContaining("seed 1, place = \"last\"; must be a whole number from 1 on");
        assertThat(file).hasContent(before);
    }

    @Test
    void movedStageIsCheckedAsTheFileIs() {
        assertThatThrownBy(() -> desk.keep(parts(
                        "recipe", "full", "stage.1.place", "1", "stage.1.least_wait", "900 d")))
                .hasMessageContaining(
                        "Stages, from stubble to seed 1, Wait at least = \"900 d\";" + " must be");
        assertThat(file).hasContent(before);
    }

    @Test
    void waitsAndWindOfAStageAreChangedInTheirPlace() throws IOException {
        desk.keep(parts(
                "recipe", "full", "stage.0.greatest_wind", "8 mph", "stage.4.rain_does_it", "yes"));

        assertThat(changedLines())
                .containsExactly(
                        "greatest_wind = \"8 mph\"             # 0.4 mph to 67 mph (0.2 m/s to 30"
                                + " m/s); left out: no limit",
                        "rain_does_it = true                 # true: a fair rain does the work of"
                                + " this stage");
        assertThat(recipe("full").stages().get(4).limits().rainDoesIt()).isTrue();
    }

    private Recipe recipe(String name) {
        return office.settings().work().recipes().stream()
                .filter(recipe -> recipe.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void recipeThatSeedsTwiceIsRefusedInTheWordsOfTheFile() {
        assertThatThrownBy(() -> desk.keep(parts(
                        "recipe",
                        "full",
                        "stage.5.name",
                        "seed again",
                        "stage.5.operation",
                        "seed",
                        "stage.5.method",
                        "drilled")))
                .hasMessageContaining("Stages, from stubble to seed has 2 stages with operation"
                        + " = \"seed\"; each recipe must have exactly one.");
        assertThat(file).hasContent(before);
    }

    @Test
    void seedBoxesAndSievesAreLinesOfTheirOwn() throws IOException {
        desk.keep(parts("seeder", "roller seeder", "box.1.holds", "3 bu"));
        desk.keep(parts("lime", "ag lime", "passes.3.mesh", "8", "passes.3.share", "99%"));

        assertThat(changedLines())
                .containsExactly(
                        "box = [{ width = \"6 ft\", holds = \"2.5 bu\" }, { width = \"6 ft\","
                                + " holds = \"3 bu\" }] # level full",
                        "passes = [{ mesh = 20, share = \"95 %\" }, { mesh = 60, share = \"70 %\" },"
                                + " { mesh = 100, share = \"50 %\" }, { mesh = 8, share = \"99%\" }]");
        assertThatThrownBy(() -> desk.keep(parts("lime", "ag lime", "passes.1.mesh", "2")))
                .hasMessageContaining("What passes which sieve 2, mesh = 2; must be");
    }

    @Test
    void mailIsSetUpByFormFirstTheWayOutThenWhoGetsIt() throws IOException {
        Map<String, String> tobin =
                parts("recipient", "", "name", "Tobin", "address", "tobin@burroak.example");
        assertThatThrownBy(() -> desk.keep(tobin)).hasMessageContaining("there is no mail server");

        desk.keep(
                parts("mail", "", "host", "mail.burroak.example", "from", "yard@burroak.example"));
        tobin.put("gets", "own-machines");
        assertThatThrownBy(() -> desk.keep(tobin))
                .hasMessageContaining("Lines of these machines")
                .hasMessageContaining("must name the machines whose lines to send");
        tobin.put("machines.3", "spreader truck");
        desk.keep(tobin);

        Settings kept = Office.settings(file, Map.of()).settings();
        assertThat(kept.mail().recipients())
                .singleElement()
                .satisfies(r -> assertThat(r.wants().machines()).containsExactly("spreader truck"));
        desk.takeOut(Map.of("kind@entry", "recipient", "name@entry", "Tobin"));
        desk.takeOut(Map.of("kind@entry", "mail"));
        assertThat(changedLines()).allMatch(String::isBlank);
    }

    @Test
    void noTextBreaksOutOfItsPlace() throws IOException {
        String evil = "x\" # ]\n[board]\nport = 1\n\\";
        for (Entry.Group group : desk.groups()) {
            String name =
                    group.single() ? "" : group.names().stream().findFirst().orElse("");
            Entry form = desk.form(group.kind(), Optional.of(name).filter(n -> !n.isEmpty()))
                    .orElseThrow();
            for (Entry.Item item : form.items()) {
                for (Entry.Box box : item.boxes()) {
                    try {
                        desk.keep(parts(group.kind(), name, box.name(), evil));
                    } catch (Refusal refused) {
                        assertThat(refused.getMessage()).isNotBlank();
                    }
                    assertThat(Office.settings(file, Map.of())
                                    .settings()
                                    .board()
                                    .port())
                            .isEqualTo(8640);
                    Files.writeString(file, before);
                }
            }
        }
    }
}
