package rainward.store.round;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import rainward.farm.Operation;
import rainward.farm.Window;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.store.EachEngine;
import rainward.store.Store;
import rainward.store.TestEngine;
import rainward.store.journal.Hollows;

/** What was given out, said and done, so that nothing of it happens twice. */
@EachEngine
class LogsIT {

    private static final Instant FIVE = Instant.parse("2026-07-15T09:00:00Z");
    private static final LocalDate DAY = LocalDate.of(2026, 7, 15);

    @Parameter
    TestEngine engine = TestEngine.SQLITE;

    @TempDir
    Path home;

    private Store store;

    @BeforeEach
    void open() {
        store = engine.open(home);
    }

    @AfterEach
    void close() {
        store.close();
    }

    private static PlanLog.GivenPlan plan(Instant at, String cause) {
        PlanItem item = new PlanItem(
                1,
                new PlanItem.Place("North Hollow", "Kettle Hollow", "seed", Operation.SEED),
                new PlanItem.Hands("roller seeder", "Dell"),
                new Window(at, at.plus(Duration.ofMinutes(95))),
                0.25,
                Optional.of(new PlanItem.Sowing("clover and chicory", 0.81, 0.77)));
        Plan plan = new Plan(
                at,
                List.of(item),
                List.of(new Plan.LeftOut("South Hollow", "too wet until Friday")),
                new Plan.Value(1.5, 0, 0.1, 0.05, 0));
        return new PlanLog.GivenPlan(plan, at, cause);
    }

    @Test
    void orderTellsOfAFieldByTheNameItGoesByNow() {
        store.inTransaction(books -> books.fields().take(Hollows.SURVEY, FIVE));
        give(plan(FIVE, "new forecast"));

        store.inTransaction(books -> books.fields().rename("North Hollow", "Kettle \"Top\""));
        store.inTransaction(books -> books.fields().rename("South Hollow", "Low \\ End"));

        Plan read = store.read(b -> b.plans().last()).orElseThrow().plan();
        assertThat(read.items())
                .extracting(item -> item.place().field())
                .containsExactly("Kettle \"Top\"");
        assertThat(read.leftOut()).extracting(Plan.LeftOut::field).containsExactly("Low \\ End");
        assertThat(read.items().get(0).place().property()).isEqualTo("Kettle Hollow");
    }

    private void give(PlanLog.GivenPlan given) {
        store.inTransaction(books -> {
            books.plans().add(given);
            return given;
        });
    }

    @Test
    void orderComesBackAsItWasGivenOut() {
        give(plan(FIVE, "new forecast"));
        give(plan(FIVE.plusSeconds(3600), "rain came"));

        assertThat(store.<Optional<PlanLog.GivenPlan>>read(b -> b.plans().last()))
                .contains(plan(FIVE.plusSeconds(3600), "rain came"));
        assertThat(store.<Optional<PlanLog.GivenPlan>>read(
                        b -> b.plans().lastAt(FIVE.plusSeconds(60))))
                .contains(plan(FIVE, "new forecast"));
        assertThat(store.<List<PlanLog.GivenPlan>>read(b -> b.plans().since(FIVE.plusSeconds(1))))
                .hasSize(1);
    }

    @Test
    void dayHasOneBrief() {
        BriefLog.WrittenBrief first = new BriefLog.WrittenBrief(DAY, FIVE, FIVE, false, "{}");
        BriefLog.WrittenBrief again =
                new BriefLog.WrittenBrief(DAY, FIVE.plusSeconds(60), FIVE, true, "{}");

        assertThat(store.<Boolean>inTransaction(b -> b.briefs().take(first))).isTrue();
        assertThat(store.<Boolean>inTransaction(b -> b.briefs().take(again))).isFalse();
        assertThat(store.<Optional<BriefLog.WrittenBrief>>read(b -> b.briefs().of(DAY)))
                .contains(first);
        assertThat(store.<Optional<BriefLog.WrittenBrief>>read(b -> b.briefs().lastBefore(DAY)))
                .isEmpty();
        assertThat(store.<Optional<BriefLog.WrittenBrief>>read(
                        b -> b.briefs().lastBefore(DAY.plusDays(3))))
                .contains(first);
    }

    @Test
    void slotOfAJobCountsOnce() {
        assertThat(once("brief", FIVE)).isTrue();
        assertThat(once("brief", FIVE)).isFalse();
        assertThat(once("pull", FIVE)).isTrue();
        assertThat(once("brief", FIVE.plus(Duration.ofDays(1)))).isTrue();

        assertThat(store.<Optional<Instant>>read(b -> b.jobs().lastDue("brief")))
                .contains(FIVE.plus(Duration.ofDays(1)));
        assertThat(store.<Optional<Instant>>read(b -> b.jobs().lastDue("backup")))
                .isEmpty();
    }

    @Test
    void slotOfAJobThatFailedDoesNotCount() {
        try {
            store.inTransaction(books -> {
                books.jobs().once("brief", FIVE, FIVE);
                throw new IllegalStateException("the power goes");
            });
        } catch (IllegalStateException expected) {
            assertThat(once("brief", FIVE)).isTrue();
        }
    }

    private boolean once(String job, Instant due) {
        return store.inTransaction(books -> books.jobs().once(job, due, due.plusSeconds(5)));
    }

    @Test
    void windowIsRememberedFromOpeningToClosing() {
        WindowLog.WindowEvent opened = new WindowLog.WindowEvent("w1", FIVE, "opened", "{}");
        WindowLog.WindowEvent closed =
                new WindowLog.WindowEvent("w1", FIVE.plusSeconds(7200), "closed", "{}");
        WindowLog.WindowEvent other = new WindowLog.WindowEvent("w2", FIVE, "opened", "{}");
        store.inTransaction(books -> {
            books.windows().add(opened);
            books.windows().add(other);
            books.windows().add(closed);
            return books;
        });

        assertThat(store.<List<WindowLog.WindowEvent>>read(b -> b.windows().of("w1")))
                .containsExactly(opened, closed);
        assertThat(store.<List<WindowLog.WindowEvent>>read(
                        b -> b.windows().since(FIVE.plusSeconds(1))))
                .containsExactly(closed);
    }
}
