package rainward.daemon.board;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import rainward.board.house.Saying;
import rainward.board.house.Takes;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.StageRecord;

/** What is said on the board in a real browser: taken once, shown to all, kept while offline. */
@ExtendWith(BoardHall.class)
class BoardWordsIT {

    private static BoardStage stage;
    private static Chromium chromium;

    private Chromium.Window window;

    @BeforeEach
    void phone() {
        window = chromium.window(Chromium.PHONE);
    }

    @BeforeAll
    static void open() {
        chromium = BoardHall.chromium();
        stage = BoardHall.ofThisMachine();
        stage.settled();
    }

    @AfterEach
    void shut() {
        assertThat(window.complaints().stream()
                        .filter(c -> !c.contains("Failed to load resource")
                                && !c.contains("ERR_INTERNET_DISCONNECTED")))
                .isEmpty();
        window.close();
        stage.settled();
    }

    private Page open(String path) {
        return window.open(stage.link(path));
    }

    private static FieldStatus status(String field) {
        return stage.office().store().read(books -> books.journal().statusOf(field));
    }

    private static void press(Page page, String act) {
        Locator button = page.locator("button[value=" + act + "]").first();
        Locator inside = page.locator("details", new Page.LocatorOptions().setHas(button));
        if (inside.count() > 0 && inside.first().getAttribute("open") == null) {
            inside.first().locator("summary").click();
        }
        button.click();
    }

    private static Locator button(Page page, String label) {
        return page.getByLabel(label, new Page.GetByLabelOptions().setExact(true));
    }

    private static String said(Page page) {
        page.waitForSelector(".said");
        return page.locator(".said").textContent();
    }

    @Test
    void taskOfTheDayIsStartedAndDoneByTwoTaps() {
        Page page = open("/?who=Tobin");
        String field = page.locator(".task:not(.begun) a").first().textContent();

        button(page, "Start spread of " + field).click();
        assertThat(said(page)).contains(field + ": spread started at");
        button(page, "Not started: spread of " + field).waitFor();
        button(page, "Done: spread of " + field).click();
        page.waitForFunction("() => document.querySelector('.said').textContent.includes('done')");

        assertThat(status(field).of("spread").filter(StageRecord::done)).isPresent();
        assertThat(status(field).of("spread").flatMap(StageRecord::machine))
                .contains("spreader truck");
    }

    @Test
    void wordShowsWhatItChangedInTheOrder() {
        Page page = open("/field/OC3%20High%20Bank");

        press(page, "PIN");
        assertThat(said(page)).contains("OC3 High Bank goes before all others now.");
        page.waitForSelector(".said li");

        assertThat(page.locator(".said").textContent()).contains("OC3 High Bank:");
        assertThat(page.locator(".headline").textContent()).contains("pinned");
        press(page, "FREE");
        page.waitForFunction("() => document.querySelector('.said').textContent.includes('free')");
        assertThat(status("OC3 High Bank").pinnedFirst()).isFalse();
    }

    @Test
    void fieldIsHeldUntilADayAndTakenBack() {
        Page page = open("/field/SH6%20Spur");

        page.locator("summary", new Page.LocatorOptions().setHasText("leave out"))
                .click();
        page.locator("input[name=until]").fill("2026-07-20");
        press(page, "HOLD");

        assertThat(said(page)).contains("left out until Mon, Jul 20 midnight");
        assertThat(status("SH6 Spur").heldUntil()).isPresent();
    }

    @Test
    void fieldThatStaysOutOfTheOrderIsToldOfAsMuchAsOneThatMoves() {
        Page page = open("/field/SH2%20Deep%20Sand");
        for (String day : List.of("20", "21")) {
            page.navigate(stage.link("/field/SH2%20Deep%20Sand"));
            page.locator("summary", new Page.LocatorOptions().setHasText("leave out"))
                    .click();
            page.locator("input[name=until]").fill("2026-08-" + day);
            press(page, "HOLD");
            page.waitForSelector(".said:has-text('Aug " + day + " midnight') li");
        }

        assertThat(page.locator(".said li").first().textContent())
                .isEqualTo(
                        "SH2 Deep Sand: was not in the order (is held until Thu, Aug 20 midnight,"
                                + " after the days planned); now not in the order (is held until"
                                + " Fri, Aug 21 midnight, after the days planned)");
    }

    @Test
    void droppedFieldLeavesTheOrderAndComesBack() {
        Page page = open("/field/SC7%20Stile%20Field");
        FieldState before = status("SC7 Stile Field").state();

        press(page, "DROP");
        assertThat(said(page)).contains("out of the order for this season");
        assertThat(status("SC7 Stile Field").state()).isEqualTo(FieldState.DROPPED);
        press(page, "FREE");
        page.waitForFunction("() => document.querySelector('.said').textContent.includes('free')");
        assertThat(status("SC7 Stile Field").state()).isEqualTo(before);
    }

    @Test
    void gaugeSoilAndStandAreWrittenDown() {
        Page page = open("/weather");
        page.locator("select[name=property]").selectOption("Sandhill");
        page.locator("input[name=amount]").fill("0.45in");
        press(page, "RAIN");
        assertThat(said(page)).contains("Sandhill: 0.45 in written down.");
        assertThat(page.locator("main").textContent()).contains("Sandhill: 0.45 in");

        page.navigate(stage.link("/field/NF4%20Ditch"));
        page.locator("summary", new Page.LocatorOptions().setHasText("somebody dug"))
                .click();
        page.locator("select[name=word]").selectOption("moist");
        press(page, "SOIL");
        assertThat(said(page)).contains("NF4 Ditch: moist at seed depth");
    }

    @Test
    void whatCannotBeIsRefusedInWordsAndTheTypedTextStays() {
        Page page = open("/weather");

        page.locator("input[name=amount]").fill("buckets");
        press(page, "RAIN");
        page.waitForFunction(
                "() => document.getElementById('line').textContent.includes('no amount of rain')");

        assertThat(page.locator("input[name=amount]").inputValue()).isEqualTo("buckets");
    }

    @Test
    void secondWindowShowsTheWordOfTheFirstByItself() {
        Page page = open("/field/NF2%20Windmill");
        try (Chromium.Window other = chromium.window(Chromium.OFFICE)) {
            Page watching = other.open(stage.link("/field/NF2%20Windmill"));

            press(page, "START");
            said(page);

            watching.waitForSelector(".task.begun");
            assertThat(watching.locator("main").textContent()).contains("under way since");
            assertThat(other.complaints()).isEmpty();
        }
    }

    @Test
    void nobodyWhoTypesIsInterrupted() {
        Page page = open("/field/NF3%20School%20Side");
        page.locator("summary", new Page.LocatorOptions().setHasText("Note")).click();
        page.locator("textarea[name=note]").fill("half a sent");

        stage.take(new Saying(
                "other-1 PIN", "Marnie", Saying.Act.PIN, Map.of("field", "NF1 Home Quarter")));
        page.waitForFunction(
                "() => document.getElementById('line').textContent.includes('changed')");

        assertThat(page.locator("textarea[name=note]").inputValue()).isEqualTo("half a sent");
        stage.take(new Saying(
                "other-2 FREE", "Marnie", Saying.Act.FREE, Map.of("field", "NF1 Home Quarter")));
    }

    @Test
    void offlineSaysSoAndSendsWhatWasSaidOnceTheConnectionIsBack() {
        Page page = open("/field/OC5%20Gravel%20Bar");
        page.locator("summary", new Page.LocatorOptions().setHasText("Note")).click();
        window.offline(true);

        page.locator("textarea[name=note]").fill("no signal at the bar");
        press(page, "NOTE");
        page.waitForFunction(
                "() => document.getElementById('line').textContent.includes('1 word waits')");
        assertThat(page.locator("#line").textContent()).contains("No connection");
        window.offline(false);

        page.waitForFunction(
                "() => !document.getElementById('line').textContent.includes('waits')");
        assertThat(stage.history("OC5 Gravel Bar")).containsOnlyOnce("no signal at the bar");
    }

    @Test
    void typedTextOutlivesTheWindow() {
        Page page = open("/field/OC4%20Willow%20End");
        page.locator("summary", new Page.LocatorOptions().setHasText("Note")).click();
        page.locator("textarea[name=note]").fill("to be continued");

        page.reload();

        assertThat(page.locator("textarea[name=note]").inputValue()).isEqualTo("to be continued");
    }

    @Test
    void formThatIsSentTwiceIsTakenOnce() {
        Saying saying = new Saying(
                "twice NOTE",
                "Dell",
                Saying.Act.NOTE,
                Map.of("field", "KL4 Point", "note", "twice said"));

        Takes.Taken first = stage.take(saying);
        Takes.Taken second = stage.take(saying);

        assertThat(second).isEqualTo(first);
        assertThat(stage.history("KL4 Point")).containsOnlyOnce("twice said");
    }

    @Test
    void ofManyWhoTapTheSameAtOnceOneIsWrittenAndTheOthersAreTold() {
        List<CompletableFuture<Takes.Taken>> taps = IntStream.range(0, 6)
                .mapToObj(i -> CompletableFuture.supplyAsync(() -> stage.take(new Saying(
                        "tap " + i,
                        "person " + i,
                        Saying.Act.START,
                        Map.of("field", "SH4 Ridge", "stage", "spread")))))
                .toList();

        List<String> outcomes = taps.stream()
                .map(CompletableFuture::join)
                .map(Takes.Taken::outcome)
                .toList();

        assertThat(outcomes).containsOnlyOnce("written");
        assertThat(outcomes.stream().filter("already so"::equals)).hasSize(5);
    }

    @Test
    void whoSaysTheOppositeAtOnceIsToldWhatTheOtherDid() {
        stage.take(new Saying("drop DROP", "Dell", Saying.Act.DROP, Map.of("field", "SC4 Hollow")));

        Takes.Taken pinned = stage.take(
                new Saying("pin PIN", "Marnie", Saying.Act.PIN, Map.of("field", "SC4 Hollow")));

        assertThat(pinned.refused()).isTrue();
        assertThat(pinned.words()).contains("SC4 Hollow is dropped and not in the order");
        stage.take(new Saying("free FREE", "Dell", Saying.Act.FREE, Map.of("field", "SC4 Hollow")));
    }

    @Test
    void markupInEveryTextFieldStaysText() {
        String evil = "<img src=x onerror=alert(1)>\"'><script>alert(2)</script>";
        Page page = open("/field/KL3%20Ice%20House");
        page.locator("summary", new Page.LocatorOptions().setHasText("Note")).click();
        page.locator("textarea[name=note]").fill(evil);
        press(page, "NOTE");
        said(page);
        assertThat(page.locator("table").textContent()).contains(evil);

        for (String address : List.of("/ground?find=", "/?who=", "/field/")) {
            page.navigate(stage.link(address)
                    + java.net.URLEncoder.encode(evil, java.nio.charset.StandardCharsets.UTF_8)
                            .replace("+", "%20"));
            assertThat(page.locator("img").count()).isZero();
            assertThat(page.locator("main script").count()).isZero();
        }
        for (String box : List.of("amount", "at", "since")) {
            page.navigate(stage.link("/weather"));
            page.locator("input[name=amount]").fill("0.1in");
            page.locator("input[name=" + box + "]").fill(evil);
            press(page, "RAIN");
            page.waitForFunction(
                    "() => document.getElementById('line').textContent.includes('Not written')");
            assertThat(page.locator("img").count()).isZero();
        }
    }

    @Test
    void fieldIsChangedByFormWithTheChecksOfAnImport() {
        Page page = open("/field/OC2%20Ox%20Bow");
        page.locator("summary", new Page.LocatorOptions().setHasText("what is wanted"))
                .click();
        page.locator("input[name=priority]").fill("3");
        page.locator("input[name=mixes]").fill("no such mix");
        press(page, "FIELD");
        page.waitForFunction(
                "() => document.getElementById('line').textContent.includes('There is no mix')");

        page.locator("input[name=mixes]").fill("three brassicas");
        press(page, "FIELD");

        assertThat(said(page)).contains("OC2 Ox Bow is changed.");
        var changed = stage.office()
                .store()
                .read(books -> books.fields().named("OC2 Ox Bow"))
                .orElseThrow();
        assertThat(changed.wish().mixes()).containsExactly("three brassicas");
        assertThat(changed.wish().priority()).isEqualTo(3);
    }

    @Test
    void settingsAreKeptOnlyWhereTheyHaveNoFault() throws java.io.IOException {
        Path file = stage.home().resolve("rainward.toml");
        String before = java.nio.file.Files.readString(file);
        Page page = open("/settings");

        page.locator("summary", new Page.LocatorOptions().setHasText("Change the text"))
                .click();
        page.locator("textarea")
                .fill(before.replaceFirst("width = \"[^\"]*\"", "width = \"900 ft\""));
        press(page, "SETTINGS");
        page.waitForFunction(
                "() => document.getElementById('line').textContent.includes('machine[1].width')");
        assertThat(java.nio.file.Files.readString(file)).isEqualTo(before);

        page.locator("textarea").fill(before + "# kept from a page\n");
        press(page, "SETTINGS");
        assertThat(said(page)).contains("The settings are kept");
        assertThat(java.nio.file.Files.readString(file)).endsWith("# kept from a page\n");
        assertThat(stage.home().resolve("rainward.before.toml")).hasContent(before);
    }

    @Test
    void shedIsCountedByForm() {
        Page page = open("/loads");

        page.locator("input[name=item]").fill("turnip");
        page.locator("input[name=amount]").fill("300 lb");
        press(page, "COUNT");

        assertThat(said(page)).contains("counted");
        assertThat(page.locator(".marks").textContent()).contains("turnip");
    }

    @Test
    void wordOfACommandBesideTheServiceMovesTheOrderToo() {
        stage.watch();
        long before = stage.standing().turn();

        stage.office()
                .store()
                .inTransaction(books -> new rainward.daemon.word.FieldDesk(stage.office())
                        .take(
                                books,
                                new rainward.daemon.word.FieldDesk.Said(
                                        rainward.daemon.word.FieldDesk.Verb.PIN,
                                        "MP8",
                                        "",
                                        "Dell")));

        org.awaitility.Awaitility.await()
                .atMost(java.time.Duration.ofSeconds(90))
                .until(() -> stage.standing().turn() > before);
        assertThat(stage.standing().round().orElseThrow().outlook().field("MP8 West Gate"))
                .hasValueSatisfying(
                        f -> assertThat(f.item().status().pinnedFirst()).isTrue());
    }
}
