package rainward.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import rainward.daemon.demo.DemoScene;
import rainward.farm.Crew;
import rainward.farm.Field;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.replay.crew.Policy;
import rainward.replay.crew.Scene;
import rainward.replay.score.SeasonResult;
import rainward.replay.score.SeasonScore;

class TrialTest {

    private static final double ACRE_HA = 0.40468564224;
    private static final Scene SCENE = DemoScene.read(10);

    private static long tillers(Scene scene) {
        return scene.roster().crew().machines().stream()
                .filter(m -> m.operations().contains(Operation.TILL))
                .count();
    }

    @Test
    void twiceTheCrewIsTwiceTheMachinesWithSomebodyOnEach() {
        Crew crew = Trial.CAPACITY.scene(SCENE).roster().crew();

        assertThat(crew.machines()).hasSize(2 * SCENE.roster().crew().machines().size());
        assertThat(crew.people()).hasSize(2 * SCENE.roster().crew().people().size());
        assertThat(crew.machines())
                .extracting(Machine::name)
                .doesNotHaveDuplicates()
                .allMatch(m -> crew.people().stream().filter(p -> p.canRun(m)).count() >= 2);
    }

    @Test
    void oneMoreTractorTillsAndHasItsDriver() {
        Scene more = Trial.TILLAGE.scene(SCENE);

        assertThat(tillers(more)).isEqualTo(tillers(SCENE) + 1);
        assertThat(more.roster().crew().people())
                .hasSize(SCENE.roster().crew().people().size() + 1);
    }

    @Test
    void farmsAreTurnedAndFieldsOfAFarmKeepTheirOrder() {
        List<Field> turned = Trial.FARMS_TURNED.scene(SCENE).fields();
        String first = SCENE.fields().get(0).property();

        assertThat(turned).containsExactlyInAnyOrderElementsOf(SCENE.fields());
        assertThat(turned.get(turned.size() - 1).property()).isEqualTo(first);
        assertThat(turned.stream().filter(f -> f.property().equals(first)).toList())
                .isEqualTo(SCENE.fields().stream()
                        .filter(f -> f.property().equals(first))
                        .toList());
    }

    private static SeasonScore score(Policy policy, double acres) {
        SeasonScore.Sums sums = new SeasonScore.Sums(acres * ACRE_HA, 2 * acres * ACRE_HA, 0, 0);
        return new SeasonScore(policy, sums, sums, new SeasonScore.Effort(0, 0, 0, 0), List.of());
    }

    private static Gains.Tried season(int day, double rainward, double told, double twice) {
        return new Gains.Tried(
                new SeasonResult(
                        "s",
                        LocalDate.of(2020, 7, day),
                        1,
                        List.of(
                                score(Policy.RAINWARD, rainward),
                                score(Policy.TOLD_THE_FUTURE, told))),
                List.of(new Gains.Outcome(Trial.CAPACITY, score(Policy.RAINWARD, twice))));
    }

    @Test
    void gainsArePairedBySeason() {
        List<Gains.Line> lines = Gains.of(List.of(season(1, 50, 53, 60), season(2, 80, 83, 90)));

        assertThat(lines)
                .extracting(Gains.Line::name)
                .containsExactly(Trial.FORECAST.words(), Trial.CAPACITY.words());
        assertThat(lines.get(0).acres().low()).isCloseTo(3, within(1e-9));
        assertThat(lines.get(0).acres().high()).isCloseTo(3, within(1e-9));
        assertThat(lines.get(1).worth().mean()).isCloseTo(20, within(1e-9));
    }

    @Test
    void nothingRunIsNothingGained() {
        assertThat(Gains.of(List.of())).isEmpty();
    }
}
