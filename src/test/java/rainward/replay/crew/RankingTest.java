package rainward.replay.crew;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.queue.problem.Job;
import rainward.queue.problem.PlanProblem;
import rainward.replay.truth.TrueWeather;

/** What each simple policy goes for first, and what those that plan are told. */
class RankingTest {

    private static final TrueWeather TRUTH = Worlds.truth(2);
    private static final World WORLD = Worlds.world(TRUTH);
    private static final Machine MACHINE =
            Worlds.SCENE.roster().crew().machines().get(0);

    private List<FieldWork> fields = List.of();

    @BeforeEach
    void fresh() {
        fields = Worlds.SCENE.fields().stream()
                .map(f -> new FieldWork(f, Worlds.SCENE.roster().recipeOf(f).orElseThrow()))
                .toList();
    }

    private List<Field> wanted(Policy policy, GeoPoint at) {
        Ranking ranking = new Ranking(policy, WORLD, new Rounds(WORLD));
        ranking.consider(Worlds.five(2), fields);
        return ranking.wanted(MACHINE, at, Worlds.five(2), fields).stream()
                .map(w -> w.work().field())
                .toList();
    }

    @Test
    void theListIsTakenAsItStands() {
        assertThat(wanted(Policy.AS_LISTED, Worlds.SCENE.yard())).isEqualTo(Worlds.SCENE.fields());
    }

    @Test
    void theLargestGoesFirst() {
        assertThat(wanted(Policy.LARGEST_FIRST, Worlds.SCENE.yard()))
                .isSortedAccordingTo(Comparator.comparingDouble(Field::areaHa).reversed());
    }

    @Test
    void theNearestToTheMachineGoesFirst() {
        Field last = Worlds.SCENE.fields().get(29);
        GeoPoint there = WORLD.property(last.property()).place();

        assertThat(wanted(Policy.NEAREST_NEXT, there).get(0).property()).isEqualTo(last.property());
    }

    @Test
    void theReadiestGoesFirst() {
        Map<String, Double> ready = new Rounds(WORLD).readiness(Worlds.five(2), fields);

        assertThat(wanted(Policy.READIEST_FIRST, Worlds.SCENE.yard()))
                .isSortedAccordingTo(
                        Comparator.comparingDouble(f -> -ready.getOrDefault(f.name(), 0.0)));
    }

    private PlanProblem problem(Policy policy) {
        return new Rounds(WORLD)
                .problem(policy, new Rounds.Asked(Worlds.five(2), fields, Optional.empty()));
    }

    /** Share of the hours in a week for which tillage is told wrongly to be stopped or not. */
    private static double wrong(PlanProblem problem) {
        int wrong = 0;
        for (Job job : problem.jobs()) {
            BitSet told = Optional.ofNullable(job.stopped().get(Operation.TILL)).orElseThrow();
            for (int h = 0; h < 168; h++) {
                Instant at = Worlds.five(2).plus(Duration.ofHours(h));
                wrong += told.get(h) == WORLD.stops(job.name(), Operation.TILL, at) ? 0 : 1;
            }
        }
        return wrong / (168.0 * problem.jobs().size());
    }

    @Test
    void whoKnowsTheFutureKnowsWhenTheGroundIsFit() {
        assertThat(wrong(problem(Policy.TOLD_THE_FUTURE)))
                .isLessThan(0.5 * wrong(problem(Policy.RAINWARD)));
    }

    @Test
    void workDoneSinceLeavesTheProblem() {
        PlanProblem morning = problem(Policy.RAINWARD);
        FieldWork first = fields.get(0);
        while (first.open()) {
            first.begin(Worlds.five(2), MACHINE.name());
            first.finish(Worlds.five(2).plusSeconds(3600), Optional.of("any"));
        }

        PlanProblem later = new Rounds(WORLD)
                .since(
                        morning,
                        new Rounds.Asked(
                                Worlds.five(2).plusSeconds(7200), fields, Optional.empty()));

        assertThat(later.asOf()).isEqualTo(Worlds.five(2).plusSeconds(7200));
        assertThat(later.horizon()).isEqualTo(morning.horizon());
        assertThat(later.jobs())
                .extracting(Job::name)
                .hasSize(morning.jobs().size() - 1)
                .doesNotContain(first.field().name());
    }
}
