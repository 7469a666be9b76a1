package rainward.queue.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.StageRecord;
import rainward.farm.Window;
import rainward.queue.check.PlanChecker;
import rainward.queue.problem.InBoxes;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;
import rainward.queue.reasons.OrderReasons;
import rainward.queue.search.Effort;

/** Fields at the yard, 1 ha an hour; half an hour sets the seeder for another mix. */
class ChangeOfMixTest {

    private static SmallFarm.Plot sown(String name, String mix) {
        SmallFarm.Plot plot = SmallFarm.plot(name, 1);
        plot.recipe = SmallFarm.SEED_ONLY;
        plot.kmNorth = 0;
        plot.mix = mix;
        return plot;
    }

    private static Plan plan(SmallFarm farm) {
        Plan plan = Planner.plan(farm.problem(), Effort.tries(1, 2_000));
        assertThat(PlanChecker.faults(farm.problem(), plan)).isEmpty();
        return plan;
    }

    private static List<Double> starts(Plan plan) {
        return plan.items().stream().map(i -> SmallFarm.hour(i.work().from())).toList();
    }

    private static List<String> mixes(Plan plan) {
        return plan.items().stream().map(i -> i.sowing().orElseThrow().mix()).toList();
    }

    @Test
    void theSeederIsSetBeforeAFieldOfAnotherMix() {
        SmallFarm farm = new SmallFarm().with(sown("A", "brassica"), sown("B", "clover"));
        Plan plan = plan(farm);
        assertThat(starts(plan)).containsExactly(7.0, 8.5);
        assertThat(plan.items())
                .extracting(PlanItem::setting)
                .containsExactly(Duration.ZERO, SmallFarm.MIX_CHANGE);
    }

    @Test
    void fieldsOfOneMixFollowEachOther() {
        SmallFarm farm = new SmallFarm()
                .with(
                        sown("A", "brassica"),
                        sown("B", "clover"),
                        sown("C", "brassica"),
                        sown("D", "clover"));
        assertThat(mixes(plan(farm)))
                .isIn(
                        List.of("brassica", "brassica", "clover", "clover"),
                        List.of("clover", "clover", "brassica", "brassica"));
        assertThat(starts(plan(farm))).containsExactly(7.0, 8.0, 9.5, 10.5);
    }

    @Test
    void whatIsInTheBoxesGoesInFirst() {
        SmallFarm farm = new SmallFarm()
                .with(sown("A", "brassica"), sown("B", "clover"), sown("C", "brassica"));
        farm.inBoxes = Map.of("seeder", "clover");
        assertThat(mixes(plan(farm))).containsExactly("clover", "brassica", "brassica");
        farm.inBoxes = Map.of("seeder", "brassica");
        assertThat(mixes(plan(farm))).containsExactly("brassica", "brassica", "clover");
    }

    /** The seeder is set within the shift: an hour of the morning, not of the night. */
    @Test
    void aFieldOfAnotherMixAloneWaitsForTheSeeder() {
        SmallFarm farm = new SmallFarm().with(sown("B", "clover"));
        farm.inBoxes = Map.of("seeder", "brassica");
        assertThat(starts(plan(farm))).containsExactly(7.5);
    }

    @Test
    void whatTheSeederSowedLastIsReadOffTheRecords() {
        Instant early = SmallFarm.MONDAY.minus(Duration.ofDays(2));
        SmallFarm farm = new SmallFarm();
        List<InBoxes.Sown> fields = new ArrayList<>();
        for (String mix : List.of("clover", "rye", "brassica")) {
            SmallFarm.Plot plot = sown("after " + mix, mix);
            Instant at = mix.equals("rye") ? early.plusSeconds(7200) : early;
            plot.status = done(at, mix);
            fields.add(new InBoxes.Sown(plot.job().field(), SmallFarm.SEED_ONLY));
        }
        assertThat(held(fields, farm, SmallFarm.MONDAY))
                .containsExactly(Map.entry("seeder", "rye"));
        assertThat(held(fields, farm, SmallFarm.MONDAY.plus(Duration.ofDays(13))))
                .isEmpty();
    }

    private static Map<String, String> held(
            List<InBoxes.Sown> fields, SmallFarm farm, Instant asOf) {
        return InBoxes.recorded(fields, farm.problem().crew(), Optional.empty(), asOf);
    }

    private static FieldStatus done(Instant at, String mix) {
        StageRecord seeded =
                new StageRecord("seed", Optional.empty(), Optional.of(at), Optional.empty());
        return new FieldStatus(
                FieldState.SEEDED, List.of(seeded), Optional.of(mix), Optional.empty(), false);
    }

    /** What goes on already is not set anew, whatever was sown before it. */
    @Test
    void workThatGoesOnIsSetAlready() {
        SmallFarm.Plot going = sown("A", "clover");
        going.status = new FieldStatus(
                FieldState.IN_WORK,
                List.of(new StageRecord(
                        "seed",
                        Optional.of(SmallFarm.MONDAY.plus(Duration.ofHours(8))),
                        Optional.empty(),
                        Optional.of("seeder"))),
                Optional.empty(),
                Optional.empty(),
                false);
        SmallFarm farm = new SmallFarm().with(going, sown("B", "brassica"));
        farm.asOf = SmallFarm.MONDAY.plus(Duration.ofMinutes(8 * 60 + 30));
        farm.inBoxes = Map.of("seeder", "brassica");
        assertThat(starts(plan(farm))).containsExactly(8.5, 9.5);
    }

    @Test
    void anOrderWithoutTheTimeIsRefused() {
        SmallFarm farm = new SmallFarm().with(sown("A", "brassica"), sown("B", "clover"));
        Plan plan = plan(farm);
        PlanItem last = plan.items().get(1);
        PlanItem.Sowing said = last.sowing().orElseThrow();
        PlanItem.Sowing silent = new PlanItem.Sowing(said.mix(), said.chance(), said.worth());
        Duration half = SmallFarm.MIX_CHANGE;
        Window sooner =
                new Window(last.work().from().minus(half), last.work().to().minus(half));
        assertThat(faults(farm.problem(), plan, with(last, sooner, said)))
                .anyMatch(f -> f.contains("in time"));
        assertThat(faults(farm.problem(), plan, with(last, last.work(), silent)))
                .containsExactly(last.place() + " takes PT0S to set, not PT30M");
    }

    private static PlanItem with(PlanItem item, Window work, PlanItem.Sowing sowing) {
        return new PlanItem(
                item.rank(),
                item.place(),
                item.hands(),
                work,
                item.drivingHours(),
                Optional.of(sowing));
    }

    private static List<String> faults(PlanProblem problem, Plan plan, PlanItem last) {
        List<PlanItem> items = List.of(plan.items().get(0), last);
        return PlanChecker.faults(
                problem, new Plan(plan.asOf(), items, plan.leftOut(), plan.value()));
    }

    @Test
    void theReasonTellsOfTheChange() {
        SmallFarm farm = new SmallFarm().with(sown("A", "brassica"), sown("B", "clover"));
        Plan plan = plan(farm);
        String second = plan.items().get(1).place().field();
        String mix = plan.items().get(1).sowing().orElseThrow().mix();
        assertThat(OrderReasons.of(farm.problem(), plan, second).orElseThrow().words())
                .endsWith("not sooner: seeder comes from "
                        + plan.items().get(0).place().field()
                        + "; 30 min to empty, clean and set it for " + mix);
    }
}
