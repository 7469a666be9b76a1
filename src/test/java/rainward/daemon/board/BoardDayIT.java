package rainward.daemon.board;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;
import rainward.queue.problem.PlanItem;

/** A morning of the invented crew, run from a window of a telephone's size and nothing else. */
@ExtendWith(BoardHall.class)
class BoardDayIT {

    private static final Instant QUARTER_TO_ELEVEN =
            InventedWeather.MONDAY.plus(Duration.ofMinutes(345));

    @TempDir
    Path home;

    @Test
    void crewRunsItsDayFromATelephone() {
        try (BoardStage stage = new BoardStage(home);
                Chromium.Window phone = BoardHall.chromium().window(Chromium.PHONE)) {
            Page page = phone.open(stage.link("/"));
            List<String> told = new ArrayList<>();
            Map<String, PlanItem> going = new LinkedHashMap<>();

            for (var next = next(stage, told, going);
                    next.isPresent();
                    next = next(stage, told, going)) {
                PlanItem item = next.get();
                boolean begun = going.remove(work(item)) != null;
                if (begun) {
                    tap(stage, page, item, "DONE", item.work().to());
                    told.add(work(item));
                } else {
                    tap(stage, page, item, "START", item.work().from());
                    going.put(work(item), item);
                }
            }
            readGauge(page, stage);
            noteChain(page, stage);

            assertThat(told)
                    .as("work of every machine that has some before a quarter to eleven")
                    .hasSizeGreaterThanOrEqualTo(5)
                    .anyMatch(work -> work.endsWith(" spread"))
                    .anyMatch(work -> work.endsWith(" disk"));
            assertThat(going.keySet()).anyMatch(work -> work.endsWith(" till"));
            assertThat(done(stage)).containsExactlyInAnyOrderElementsOf(told);
            page.navigate(stage.link("/season"));
            assertThat(page.locator("main").textContent()).contains("under way");
            assertThat(phone.complaints()).isEmpty();
        }
    }

    private static String work(PlanItem item) {
        return item.place().field() + " " + item.place().stage();
    }

    /**
     * What comes next on the clock before a quarter to eleven: the end of what goes on, or else
     * what the order as it stands begins.
     */
    private static Optional<PlanItem> next(
            BoardStage stage, List<String> told, Map<String, PlanItem> going) {
        stage.settled();
        Stream<PlanItem> begins =
                stage.standing().round().orElseThrow().outlook().plan().items().stream()
                        .filter(item -> item.shareFraction() == 1)
                        .filter(item ->
                                !told.contains(work(item)) && !going.containsKey(work(item)));
        return Stream.concat(going.values().stream(), begins)
                .filter(item -> when(item, going).isBefore(QUARTER_TO_ELEVEN))
                .min(Comparator.comparing(item -> when(item, going)));
    }

    private static Instant when(PlanItem item, Map<String, PlanItem> going) {
        return going.containsKey(work(item)) ? item.work().to() : item.work().from();
    }

    private static void tap(BoardStage stage, Page page, PlanItem item, String act, Instant at) {
        stage.setClock(at.isAfter(stage.now()) ? at : stage.now());
        String stageOfField = item.place().stage() + " of " + item.place().field();
        String label = (act.equals("DONE") ? "Done: " : "Start ") + stageOfField;
        page.navigate(stage.link("/?who=" + item.hands().person()));
        Locator button = page.getByLabel(label, new Page.GetByLabelOptions().setExact(true));
        if (!button.first().isVisible()) {
            page.locator(".people details summary").first().click();
        }
        button.first().click();
        page.waitForSelector(".said");
        assertThat(page.locator(".said").textContent()).contains(item.place().field());
    }

    /** Said at once; then what it changed in the order comes by itself. */
    private static String confirmed(BoardStage stage, Page page) {
        page.waitForSelector(".said");
        String words = page.locator(".said strong").textContent();
        stage.settled();
        page.waitForFunction("() => /What it changed|stays as it was/"
                + ".test(document.querySelector('.said').textContent)");
        return words;
    }

    private static void press(Page page, String act) {
        Locator button = page.locator("button[value=" + act + "]").first();
        Locator inside = page.locator("details", new Page.LocatorOptions().setHas(button));
        if (inside.count() > 0 && inside.first().getAttribute("open") == null) {
            inside.first().locator("summary").click();
        }
        button.click();
    }

    private static void way(Page page, String name) {
        page.locator(".top nav a", new Page.LocatorOptions().setHasText(name)).click();
        page.waitForLoadState();
    }

    private static void field(Page page, String name) {
        way(page, "Ground");
        page.locator("input[name=find]").fill(name);
        page.locator("button", new Page.LocatorOptions().setHasText("Find")).click();
        page.locator("tbody a").first().click();
        page.waitForLoadState();
        assertThat(page.locator("h1").textContent()).startsWith(name);
    }

    @Test
    void everythingThatADayBringsIsSaidFromTheTelephoneAlone() {
        try (BoardStage stage = new BoardStage(home);
                Chromium.Window phone = BoardHall.chromium().window(Chromium.PHONE)) {
            Page page = phone.open(stage.link("/"));
            page.locator(".ways a", new Page.LocatorOptions().setHasText("Tobin"))
                    .click();
            page.waitForLoadState();
            press(page, "START");
            assertThat(confirmed(stage, page)).contains("spread started at");
            press(page, "UNDO");
            page.waitForFunction("() => document.querySelector('.said strong').textContent"
                    + ".includes('no longer recorded as started')");
            confirmed(stage, page);
            press(page, "DONE");
            page.waitForFunction("() => document.querySelector('.said strong').textContent"
                    + ".includes('spread done')");
            confirmed(stage, page);

            way(page, "Weather");
            page.locator("select[name=property]").selectOption("Otter Creek");
            page.locator("input[name=amount]").fill("0.3in");
            press(page, "RAIN");
            assertThat(confirmed(stage, page)).contains("Otter Creek: 0.3 in");
            field(page, "SC4");
            press(page, "PIN");
            assertThat(confirmed(stage, page)).contains("goes before all others now");
            field(page, "SC5");
            page.locator("summary", new Page.LocatorOptions().setHasText("leave out"))
                    .click();
            page.locator("input[name=until]").fill("2026-07-16");
            press(page, "HOLD");
            assertThat(confirmed(stage, page)).contains("left out until");
            assertThat(page.locator(".said li").first().textContent()).startsWith("SC5 Two Oaks:");
            field(page, "SC6");
            press(page, "DROP");
            assertThat(confirmed(stage, page)).contains("out of the order for this season");
            field(page, "SC7");
            page.locator("summary", new Page.LocatorOptions().setHasText("Note"))
                    .click();
            page.locator("textarea[name=note]").fill("bull in the next paddock");
            press(page, "NOTE");
            assertThat(confirmed(stage, page)).contains("Noted for SC7");
            way(page, "Today");
            press(page, "REPLAN");
            assertThat(confirmed(stage, page)).contains("worked out again");
            way(page, "Loads");
            assertThat(page.locator("main").textContent()).contains("In all, for today's order");

            field(page, "NF2");
            for (String done : List.of("spread", "disk", "till", "seed")) {
                stage.setClock(stage.now().plus(Duration.ofHours(1)));
                page.getByLabel(done + " is done", new Page.GetByLabelOptions().setExact(true))
                        .click();
                page.waitForFunction(
                        "stage => (document.querySelector('.said strong') || {textContent: ''})"
                                + ".textContent.includes(stage + ' done')",
                        done);
                confirmed(stage, page);
            }
            stage.setClock(stage.now().plus(Duration.ofDays(9)));
            page.reload();
            page.locator("select[name=result]").selectOption("thin");
            page.locator("select[name=cause]").selectOption("dry");
            page.locator("input[name=counted]").fill("40%");
            press(page, "LOOK");
            page.waitForFunction("() => document.querySelector('.said strong').textContent"
                    + ".includes('thin')");

            assertThat(page.locator(".headline").textContent())
                    .contains("failed or thin, waits again");
            assertThat(page.locator("main table").textContent())
                    .contains("looked at: thin", "dry, 40% of the seed counted");
            assertThat(phone.complaints()).isEmpty();
        }
    }

    private static void readGauge(Page page, BoardStage stage) {
        page.navigate(stage.link("/weather"));
        page.locator("select[name=property]").selectOption("Mill Pond");
        page.locator("input[name=amount]").fill("0.1");
        page.locator("button[value=RAIN]").click();
        page.waitForSelector(".said");
        assertThat(page.locator(".said").textContent()).contains("Mill Pond: 0.1 in");
    }

    private static void noteChain(Page page, BoardStage stage) {
        page.navigate(stage.link("/ground"));
        page.locator("input[name=find]").fill("KL4");
        page.locator("button", new Page.LocatorOptions().setHasText("Find")).click();
        page.locator("tbody a").first().click();
        page.locator("summary", new Page.LocatorOptions().setHasText("Note")).click();
        page.locator("textarea[name=note]").fill("gate chain is cut");
        page.locator("button[value=NOTE]").click();
        page.waitForSelector(".said");
        assertThat(page.locator("table").textContent()).contains("gate chain is cut");
    }

    private static List<String> done(BoardStage stage) {
        return stage.office()
                .store()
                .read(books -> books.cases().stream()
                        .flatMap(item -> item.status().stages().stream()
                                .filter(record -> record.done())
                                .map(record -> item.field().name() + " " + record.stage()))
                        .toList());
    }
}
