package rainward.daemon.board;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
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

            for (var next = next(stage, told); !next.isEmpty(); next = next(stage, told)) {
                PlanItem item = next.get(0);
                tap(stage, page, item, "START", item.work().from());
                tap(stage, page, item, "DONE", item.work().to());
                told.add(item.place().field() + " " + item.place().stage());
            }
            readGauge(page, stage);
            noteChain(page, stage);

            assertThat(told).isNotEmpty();
            assertThat(done(stage)).containsAll(told);
            page.navigate(stage.link("/season"));
            assertThat(page.locator("main").textContent()).contains("under way");
            assertThat(phone.complaints()).isEmpty();
        }
    }

    /**
     * What the order as it stands has ending before a quarter to eleven and is not done yet, by
     * end.
     */
    private static List<PlanItem> next(BoardStage stage, List<String> told) {
        stage.settled();
        return stage.standing().round().orElseThrow().outlook().plan().items().stream()
                .filter(item ->
                        item.work().to().isBefore(QUARTER_TO_ELEVEN) && item.shareFraction() == 1)
                .filter(item ->
                        !told.contains(item.place().field() + " " + item.place().stage()))
                .sorted(Comparator.comparing(item -> item.work().to()))
                .toList();
    }

    private static void tap(BoardStage stage, Page page, PlanItem item, String act, Instant at) {
        stage.setClock(at.isAfter(stage.now()) ? at : stage.now());
        String stageOfField = item.place().stage() + " of " + item.place().field();
        String label = (act.equals("DONE") ? "Done: " : "Start ") + stageOfField;
        page.navigate(stage.link("/?who=" + item.hands().person()));
        Locator button = page.getByLabel(label, new Page.GetByLabelOptions().setExact(true));
        button.first().click();
        page.waitForSelector(".said");
        assertThat(page.locator(".said").textContent()).contains(item.place().field());
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
