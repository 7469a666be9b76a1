package rainward.daemon.board;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Crew, machines and mixes changed by form in a real browser, from a telephone. */
@ExtendWith(BoardHall.class)
class BoardFormsIT {

    private static BoardStage stage;

    private Chromium.Window phone;

    @BeforeAll
    static void open() {
        stage = BoardHall.ofThisMachine();
        stage.settled();
    }

    @BeforeEach
    void window() {
        phone = BoardHall.chromium().window(Chromium.PHONE);
    }

    @AfterEach
    void shut() {
        assertThat(phone.complaints().stream().filter(c -> !c.contains("Failed to load resource")))
                .isEmpty();
        phone.close();
        stage.settled();
    }

    private static String file() throws IOException {
        return Files.readString(stage.home().resolve("rainward.toml"));
    }

    private static void keep(Page page) {
        page.locator("button[value=ENTRY]").click();
    }

    private static String said(Page page) {
        page.waitForSelector(".said");
        return page.locator(".said").textContent();
    }

    @Test
    void somebodyIsAwayTodayAndTheOrderDoesWithoutThem() {
        Page page = phone.open(stage.link("/settings"));
        page.locator("main a[href='/settings/person/Tobin']").click();

        page.getByLabel("Away 1, from").first().fill("2026-07-13");
        page.getByLabel("Away 1, to").first().fill("2026-07-14");
        keep(page);

        assertThat(said(page)).contains("hold from now on");
        stage.settled();
        assertThat(stage.standing().round().orElseThrow().outlook().plan().items())
                .noneMatch(item -> item.hands().person().equals("Tobin")
                        && item.work().from().isBefore(stage.now().plusSeconds(24 * 3600)));
        page.navigate(stage.link("/settings/person/Tobin"));
        page.getByLabel("Away 1, from").first().fill("");
        page.getByLabel("Away 1, to").first().fill("");
        keep(page);
        assertThat(said(page)).contains("The settings are kept");
    }

    @Test
    void faultNamesTheBoxAndWhatWasTypedStays() throws IOException {
        String before = file();
        Page page = phone.open(stage.link("/settings/machine/roller%20seeder"));

        page.getByLabel("Working width").fill("900 ft");
        page.getByLabel("seed", new Page.GetByLabelOptions().setExact(true)).uncheck();
        keep(page);
        page.waitForFunction("() => document.getElementById('line').textContent"
                + ".includes('Working width = \"900 ft\"; must be')");

        assertThat(page.getByLabel("Working width").inputValue()).isEqualTo("900 ft");
        page.reload();
        assertThat(page.getByLabel("Working width").inputValue())
                .as("kept over a reload")
                .isEqualTo("900 ft");
        assertThat(page.getByLabel("seed", new Page.GetByLabelOptions().setExact(true))
                        .isChecked())
                .isFalse();
        assertThat(file()).isEqualTo(before);
        page.evaluate("() => localStorage.clear()");
    }

    @Test
    void withoutScriptTheFormComesAgainWithTheFaultAndWhatWasTyped() throws IOException {
        String before = file();
        try (Chromium.Window plain = BoardHall.chromium().windowWithoutScript(Chromium.PHONE)) {
            Page page = plain.open(stage.link("/settings/machine/disk%20tractor"));
            page.getByLabel("Working width").fill("wide");
            page.getByLabel("Working speed").fill("6 mph");
            keep(page);

            assertThat(page.locator("[role=alert]").textContent())
                    .contains("Working width = \"wide\"; must be");
            assertThat(page.getByLabel("Working width").inputValue()).isEqualTo("wide");
            assertThat(file()).isEqualTo(before);
            page.getByLabel("Working width").fill("15 ft");
            keep(page);
            assertThat(said(page)).contains("The settings are kept");
        }
        assertThat(file())
                .isEqualTo(before.replaceFirst("width = \"14 ft\"", "width = \"15 ft\"")
                        .replaceFirst(
                                "(?<=width = \"15 ft\"\n)speed = \"5 mph\"", "speed = \"6 mph\""));
    }

    @Test
    void twoWindowsThatChangeOneMachineAreToldOfEachOther() {
        try (Chromium.Window office = BoardHall.chromium().window(Chromium.OFFICE)) {
            Page one = phone.open(stage.link("/settings/machine/tiller%20tractor"));
            Page other = office.open(stage.link("/settings/machine/tiller%20tractor"));
            one.getByLabel("Working width").fill("11 ft");
            other.getByLabel("Working width").fill("9 ft");

            keep(one);
            assertThat(said(one)).contains("The settings are kept");
            keep(other);
            other.waitForFunction("() => document.getElementById('line').textContent"
                    + ".includes(\"Working width was changed meanwhile, to '11 ft'\")");
            stage.settled();
            other.waitForTimeout(500);

            assertThat(other.locator("#line").textContent())
                    .as("not covered by news of the order")
                    .contains("was changed meanwhile");
            assertThat(other.getByLabel("Working width").inputValue()).isEqualTo("9 ft");
        }
    }

    @Test
    void markupInEveryBoxStaysText() {
        String evil = "<img src=x onerror=alert(1)>\"'><script>alert(2)</script>";
        for (String path : List.of(
                "crew",
                "person/Ruth",
                "machine/roller%20seeder",
                "recipe/full",
                "mix",
                "seeder/roller%20seeder",
                "shed",
                "product",
                "lime",
                "recipient/Dell",
                "mail",
                "field",
                "boundary/KL4%20Point")) {
            Page page = phone.open(stage.link("/settings/" + path));
            page.evaluate("() => document.querySelectorAll('details').forEach(d => d.open = true)");
            for (Locator box :
                    page.locator("main input[type=text], main textarea").all()) {
                box.fill(evil);
            }
            keep(page);
            page.waitForFunction("() => document.getElementById('line').textContent"
                    + ".includes('Not written') || document.querySelector('.said')");
            page.navigate(stage.link("/settings"));
            assertThat(page.locator("img").count()).as(path).isZero();
            assertThat(page.locator("main script").count()).isZero();
        }
        phone.page().evaluate("() => localStorage.clear()");
    }

    @Test
    void fieldIsAddedRenamedAndTakenOutByForm() {
        Page page = phone.open(stage.link("/settings/field"));
        page.getByLabel("Name").fill("MP9 Spillway");
        page.getByLabel("Property").fill("Mill Pond");
        page.getByLabel("Latitude").fill("42.07");
        page.getByLabel("Longitude").fill("84.65");
        page.getByLabel("Area in acres").fill("1.5");
        keep(page);
        page.waitForFunction("() => document.getElementById('line').textContent"
                + ".includes('Mix that is wanted is missing; must be one of')");
        assertThat(page.locator("#line").textContent()).contains("Soil is missing; give either");

        page.getByLabel("Soil").selectOption("unknown");
        page.getByLabel("Mix that is wanted").selectOption("turnip and rape");
        page.getByLabel("three brassicas").check();
        page.getByLabel("Recipe").selectOption("full");
        page.getByLabel("Longitude").fill("-84.65");
        keep(page);
        assertThat(said(page)).contains("MP9 Spillway is there from now on.");
        stage.settled();
        assertThat(stage.standing().round().orElseThrow().outlook().field("MP9 Spillway"))
                .isPresent();

        page.navigate(stage.link("/field/MP9%20Spillway"));
        called(page, "MP2 Long Pond");
        page.waitForFunction("() => document.getElementById('line').textContent"
                + ".includes('There is another field')");
        page.locator("summary", new Page.LocatorOptions().setHasText("no field of ours"))
                .click();
        page.locator("button[value=ENTRY_OUT]").click();
        assertThat(said(page)).contains("MP9 Spillway is taken out.");
        stage.settled();
        page.reload();
        assertThat(page.locator("main table").textContent()).doesNotContain("Spillway");
    }

    private static final String SQUARE = "{\"type\":\"Polygon\",\"coordinates\":[[[-84.658,42.077],"
            + "[-84.656,42.077],[-84.656,42.078],[-84.658,42.078],[-84.658,42.077]]]}";

    @Test
    void boundaryIsReplacedByFormAndTheOneBeforeIsRemembered(@TempDir Path folder)
            throws IOException {
        Page page = phone.open(stage.link("/field/MP6%20Back%20Corner"));
        page.locator("summary", new Page.LocatorOptions().setHasText("what is wanted"))
                .click();
        page.locator("main a", new Page.LocatorOptions().setHasText("Replace its boundary"))
                .click();
        assertThat(page.locator("main").textContent()).contains("It holds", "are seeded");
        assertThat(overflowPx(page)).isZero();

        page.getByLabel("Boundary, as GeoJSON").fill(SQUARE.replace(",[-84.658,42.077]]]", "]]"));
        keep(page);
        page.waitForFunction("() => document.getElementById('line').textContent"
                + ".includes('a ring of its boundary is not closed; its last position must be')");
        assertThat(page.getByLabel("Boundary, as GeoJSON").inputValue()).contains("-84.656");

        page.getByLabel("From a file")
                .setInputFiles(Files.writeString(folder.resolve("mp6.geojson"), SQUARE));
        page.waitForFunction("text => document.querySelector('textarea').value === text", SQUARE);
        page.getByLabel("Part to be seeded, in acres").fill("4");
        keep(page);
        says(page, "has another boundary: 4 ac to be seeded,");
        assertThat(page.locator("h1").textContent()).isEqualTo("MP6 Back Corner");
        stage.settled();
        page.reload();
        assertThat(page.locator("main table").textContent())
                .contains("another boundary: 4 ac to be seeded,");
        assertThat(page.locator(".facts").textContent()).contains("4 ac");
    }

    @Test
    void withoutScriptARefusedBoundaryComesAgain() {
        try (Chromium.Window plain = BoardHall.chromium().windowWithoutScript(Chromium.PHONE)) {
            Page page = plain.open(stage.link("/settings/boundary/MP2%20Long%20Pond"));
            assertThat(page.getByLabel("From a file").isVisible()).isFalse();
            page.getByLabel("Boundary, as GeoJSON").fill("{\"type\":\"Polygon\"");
            keep(page);

            assertThat(page.locator("[role=alert]").textContent()).contains("is not JSON");
            assertThat(page.getByLabel("Boundary, as GeoJSON").inputValue())
                    .isEqualTo("{\"type\":\"Polygon\"");
        }
    }

    @Test
    void stageIsPutBetweenTwoOthersFromATelephone() throws IOException {
        String before = file();
        Page page = phone.open(stage.link("/settings/recipe/worked%20ground"));
        page.locator("summary", new Page.LocatorOptions().setHasText("3 one more"))
                .click();
        page.getByLabel("Stages, from stubble to seed 3, Place").fill("2");
        page.getByLabel("Stages, from stubble to seed 3, Stage").fill("roll");
        page.getByLabel("Stages, from stubble to seed 3, Work").selectOption("firm");
        assertThat(overflowPx(page)).isZero();
        keep(page);
        says(page, "The settings are kept");
        assertThat(file()).matches("(?s).*name = \"till\".*name = \"roll\".*name = \"seed\".*");

        page.navigate(stage.link("/settings/recipe/worked%20ground"));
        assertThat(page.locator("summary").allTextContents())
                .startsWith("1 till", "2 roll", "3 seed");
        page.locator("summary", new Page.LocatorOptions().setHasText("2 roll")).click();
        page.getByLabel("Stages, from stubble to seed 2, Stage").fill("");
        page.getByLabel("Stages, from stubble to seed 2, Work").selectOption("");
        keep(page);
        says(page, "The settings are kept");
        assertThat(file()).isEqualToIgnoringWhitespace(before);
    }

    private static int overflowPx(Page page) {
        return (int) page.evaluate("() => Math.max(0, document.documentElement.scrollWidth"
                + " - document.documentElement.clientWidth)");
    }

    private static void says(Page page, String words) {
        page.waitForFunction(
                "words => (document.querySelector('.said') || {textContent: ''}).textContent"
                        + ".includes(words)",
                words);
    }

    private static void called(Page page, String name) {
        page.locator("summary", new Page.LocatorOptions().setHasText("what is wanted"))
                .click();
        page.locator("input[name=name]").fill(name);
        page.locator("button[value=FIELD]").click();
    }

    @Test
    void renamedFieldKeepsItsHistoryItsPlaceAndItsOldAddress() {
        Page page = phone.open(stage.link("/field/SC2%20Graveyard%20Side"));
        page.locator("summary", new Page.LocatorOptions().setHasText("Note")).click();
        page.locator("textarea[name=note]").fill("stones at the wall");
        page.locator("button[value=NOTE]").click();
        said(page);

        called(page, "SC2 Elder <i>Side</i>");
        says(page, "is called SC2 Elder");
        stage.settled();
        page.waitForFunction("() => /What it changed|stays as it was/"
                + ".test((document.querySelector('.said') || {textContent: ''}).textContent)");
        assertThat(page.locator(".said").textContent()).doesNotContain("Graveyard Side:");

        page.navigate(stage.link("/field/SC2%20Graveyard%20Side"));
        assertThat(page.locator("h1").textContent()).isEqualTo("SC2 Elder <i>Side</i>");
        assertThat(page.locator("main table").textContent())
                .contains("stones at the wall", "before that SC2 Graveyard Side");
        called(page, "SC2 Graveyard Side");
        says(page, "is called SC2 Graveyard Side");
        assertThat(page.locator("h1").textContent()).isEqualTo("SC2 Graveyard Side");
    }

    @Test
    void personOfAnyNameIsAddedShownAsTextAndTakenOut() {
        String evil = "<b>\"O'Hare & Son/\">";
        Page page = phone.open(stage.link("/settings/person"));
        page.getByLabel("Name").fill(evil);
        keep(page);
        assertThat(said(page)).contains("The settings are kept");
        assertThat(page.locator(".ways b").count()).isZero();

        page.locator("main a", new Page.LocatorOptions().setHasText(evil)).click();
        assertThat(page.locator("h1").textContent()).isEqualTo(evil);
        page.locator("summary", new Page.LocatorOptions().setHasText("out")).click();
        page.locator("button[value=ENTRY_OUT]").click();

        assertThat(said(page)).contains("The settings are kept");
        assertThat(page.locator("main a", new Page.LocatorOptions().setHasText(evil))
                        .count())
                .isZero();
    }
}
