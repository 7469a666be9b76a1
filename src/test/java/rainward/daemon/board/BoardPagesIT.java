package rainward.daemon.board;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.board.door.Role;
import rainward.board.door.Visitor;
import rainward.board.house.Standing;
import rainward.board.page.Frame;
import rainward.board.page.Leaf;
import rainward.board.page.TodayPage;
import rainward.brief.Brief;
import rainward.brief.Orders;

/**
 * Every page in a real browser: it reads without script, breaks no rule of content or of
 * accessibility, and is small. Pictures of all of them are laid down in {@code target/board}.
 */
@ExtendWith(BoardHall.class)
class BoardPagesIT {

    private static final Path PICTURES = Path.of("target", "board");
    private static final int MOST_BYTES = 200_000;

    private static BoardStage stage;
    private static Chromium chromium;

    @BeforeAll
    static void open() throws IOException {
        chromium = BoardHall.chromium();
        stage = BoardHall.ofThisMachine();
        stage.mail();
        Files.createDirectories(PICTURES);
    }

    static List<String> pages() {
        return List.of(
                "/",
                "/?who=Dell",
                "/ground",
                "/loads",
                "/weather",
                "/season",
                "/post",
                "/me",
                "/settings",
                "/settings/crew",
                "/settings/person/Tobin",
                "/settings/machine/roller%20seeder",
                "/settings/mix",
                "/settings/recipe/full",
                "/settings/seeder/roller%20seeder",
                "/settings/lime",
                "/settings/recipient/Dell",
                "/settings/mail",
                "/settings/field",
                "/settings/boundary/MP1%20Orchard%20Strip",
                "/field/MP1%20Orchard%20Strip",
                "/nowhere");
    }

    private static String name(String path) {
        String name = path.replaceAll("%20| ", "-").replaceAll("[^A-Za-z0-9-]", "");
        return name.isEmpty() ? "today" : name;
    }

    @ParameterizedTest
    @MethodSource("pages")
    void everyPageReadsAtBothSizesAndBreaksNoRule(String path) {
        for (int[] size : List.of(Chromium.PHONE, Chromium.OFFICE)) {
            try (Chromium.Window window = chromium.window(size)) {
                Page page = window.open(stage.link(path));

                page.screenshot(new Page.ScreenshotOptions()
                        .setFullPage(true)
                        .setPath(PICTURES.resolve(name(path) + "-" + size[0] + ".png")));
                assertThat(overflowPx(page))
                        .as("page wider than %d px", size[0])
                        .isZero();
                assertThat(violations(page)).isEmpty();
                assertThat(window.complaints().stream().filter(c -> !c.contains("404")))
                        .isEmpty();
            }
        }
    }

    @Test
    void doorReadsAtBothSizesAndBreaksNoRule() {
        String door =
                BoardHall.ofTheNetwork().link("/door").replaceFirst("//[^/:]+:", "//localhost:");
        for (int[] size : List.of(Chromium.PHONE, Chromium.OFFICE)) {
            try (Chromium.Window window = chromium.window(size)) {
                Page page = window.open(door);

                page.screenshot(new Page.ScreenshotOptions()
                        .setPath(PICTURES.resolve("door-" + size[0] + ".png")));
                assertThat(overflowPx(page)).isZero();
                assertThat(violations(page)).isEmpty();
                page.keyboard().press("Tab");
                page.keyboard().type("Visitor");
                page.keyboard().press("Tab");
                page.keyboard().type("271828");
                page.keyboard().press("Enter");
                page.waitForSelector("nav");
                assertThat(page.locator(".asof").textContent()).contains("you are Visitor");
                assertThat(page.locator("button[value=DONE]").count()).isZero();
                assertThat(window.complaints()).isEmpty();
            }
        }
    }

    /** Words of the planner as {@code KeptSeedTest} holds them. */
    private static final String KEPT = "is made ready; its seed is kept for a better day: on the"
            + " days planned it is worth at most 10% of a full stand, 38% can be hoped for later";

    private static final String NO_ROOM = "has no room: alone it would be seeded Tue 1:00 pm, but"
            + " machines and people earn more on other fields";

    @Test
    void seedThatIsKeptIsToldApartFromWhatIsLeftOut() {
        Orders orders = stage.standing().round().orElseThrow().brief().orders();
        Orders.LeftOut other = new Orders.LeftOut(orders.later().get(1).place(), NO_ROOM);
        List<Orders.LeftOut> all = new ArrayList<>(List.of(other));
        all.add(new Orders.LeftOut(orders.later().get(0).place(), KEPT));
        String kept = orders.later().get(0).place().field();
        String html =
                new Leaf().draw("today", TodayPage.of(frame(leavingOut(all)), Optional.empty()));
        for (int[] size : List.of(Chromium.PHONE, Chromium.OFFICE)) {
            try (Chromium.Window window = chromium.window(size)) {
                window.page()
                        .route(
                                "**/kept",
                                route -> route.fulfill(new Route.FulfillOptions()
                                        .setContentType("text/html; charset=utf-8")
                                        .setBody(html)));
                Page page = window.open(stage.link("/kept"));

                page.screenshot(new Page.ScreenshotOptions()
                        .setFullPage(true)
                        .setPath(PICTURES.resolve("kept-" + size[0] + ".png")));
                assertThat(page.locator("section[aria-labelledby=h-kept]").textContent())
                        .contains("Seed kept for a better day", kept, KEPT)
                        .doesNotContain(other.place().field());
                assertThat(page.locator("section[aria-labelledby=h-out]").textContent())
                        .contains(other.place().field())
                        .doesNotContain(KEPT);
                assertThat(overflowPx(page)).isZero();
                assertThat(violations(page)).isEmpty();
            }
        }
    }

    private static Frame frame(Standing standing) {
        return new Frame(
                "Today",
                "/",
                stage.now(),
                standing,
                new Visitor("office", Role.LEAD, false),
                "",
                Optional.empty());
    }

    private static Standing leavingOut(List<Orders.LeftOut> leftOut) {
        Standing now = stage.standing();
        Standing.Round round = now.round().orElseThrow();
        Brief brief = round.brief();
        Brief changed = new Brief(
                brief.heading(),
                new Orders(brief.orders().today(), brief.orders().later(), leftOut),
                brief.changes(),
                brief.sky(),
                brief.ground(),
                brief.ahead(),
                brief.cautions(),
                brief.footing());
        return new Standing(
                now.turn(),
                now.farm(),
                Optional.of(new Standing.Round(
                        round.outlook(), changed, round.reasons(), round.roster())),
                false,
                List.of());
    }

    private static int overflowPx(Page page) {
        return (int) page.evaluate("() => Math.max(0, document.documentElement.scrollWidth"
                + " - document.documentElement.clientWidth)");
    }

    /** Rules of WCAG 2.0 to 2.2, levels A and AA, as axe-core knows them. */
    static List<String> violations(Page page) {
        page.evaluate(axe());
        Object found = page.evaluate("async () => (await axe.run(document, {runOnly: ['wcag2a',"
                + "'wcag2aa','wcag21a','wcag21aa','wcag22aa','best-practice']})).violations"
                + ".map(v => v.id + ': ' + v.help + ' ' + v.nodes.slice(0, 3)"
                + ".map(n => n.target.join(' ') + ' ' + n.failureSummary).join(' | '))");
        return new ObjectMapper()
                .convertValue(found, new com.fasterxml.jackson.core.type.TypeReference<>() {});
    }

    private static String axe() {
        try (InputStream in = BoardPagesIT.class.getResourceAsStream("/axe.min.js")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    @ParameterizedTest
    @MethodSource("pages")
    void everyPageIsSmall(String path) {
        try (Chromium.Window window = chromium.window(Chromium.PHONE)) {
            Page page = window.open(stage.link(path));

            int bytes = (int) page.evaluate("() => ['navigation', 'resource']"
                    + ".flatMap(kind => performance.getEntriesByType(kind))"
                    + ".reduce((sum, e) => sum + e.decodedBodySize, 0)");
            assertThat(bytes).isBetween(1_000, MOST_BYTES);
        }
    }

    @Test
    void withoutScriptTheOrderReadsAndAWordIsTaken() {
        try (Chromium.Window window = chromium.windowWithoutScript(Chromium.PHONE)) {
            Page page = window.open(stage.link("/field/KL4%20Point"));
            assertThat(page.locator("h1").textContent()).isEqualTo("KL4 Point");

            page.locator("details", new Page.LocatorOptions().setHasText("Worth keeping"))
                    .locator("summary")
                    .click();
            page.locator("textarea[name=note]").fill("said without script");
            page.locator("button[value=NOTE]").click();

            assertThat(page.locator(".said").textContent()).contains("Noted for KL4 Point.");
            assertThat(page.locator("table").textContent()).contains("said without script");
        }
    }

    @Test
    void keyboardAloneReachesAndPressesEverything() {
        try (Chromium.Window window = chromium.window(Chromium.OFFICE)) {
            Page page = window.open(stage.link("/field/KL2%20Kettle"));

            page.keyboard().press("Tab");
            assertThat(focused(page)).isEqualTo("Skip to the page");
            page.keyboard().press("Enter");
            String reached = "";
            for (int press = 0; press < 40 && !reached.equals("Start spread"); press++) {
                page.keyboard().press("Tab");
                reached = focused(page);
            }
            assertThat(reached).isEqualTo("Start spread");
            page.keyboard().press("Enter");

            page.waitForSelector(".said");
            assertThat(page.locator(".said").textContent())
                    .contains("KL2 Kettle: spread started at");
        }
    }

    private static String focused(Page page) {
        return String.valueOf(page.evaluate("() => document.activeElement.getAttribute("
                + "'aria-label') || document.activeElement.textContent.trim()"));
    }

    @Test
    void daySheetPrintsWithoutButtons() {
        try (Chromium.Window window = chromium.window(Chromium.OFFICE)) {
            Page page = window.open(stage.link("/"));
            page.emulateMedia(new Page.EmulateMediaOptions()
                    .setMedia(com.microsoft.playwright.options.Media.PRINT));

            assertThat(page.locator("button:visible").count()).isZero();
            assertThat(page.locator("nav:visible").count()).isZero();
            assertThat(page.locator(".task:visible").count()).isGreaterThan(10);
            page.pdf(new Page.PdfOptions().setPath(PICTURES.resolve("day-sheet.pdf")));
        }
    }
}
