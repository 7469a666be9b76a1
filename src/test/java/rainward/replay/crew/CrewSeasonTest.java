package rainward.replay.crew;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rainward.farm.CrewHours;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.farm.Stage;
import rainward.farm.StageRecord;
import rainward.replay.truth.TrueWeather;

/** What a crew does in a season, held against the rules that stop a real one. */
class CrewSeasonTest {

    private static final long TRIES = 200;
    private static final Duration STEP = Duration.ofMinutes(15);

    private static final TrueWeather TRUTH = Worlds.truth(3);
    private static final World WORLD = Worlds.world(TRUTH);

    private static SeasonLog run(World world, Policy policy) {
        return CrewSeason.run(world, policy, TRIES);
    }

    private static Stage stage(SeasonLog.Sown sown, StageRecord done) {
        Recipe recipe = Worlds.SCENE.roster().recipeOf(sown.item().field()).orElseThrow();
        return recipe.stages().stream()
                .filter(s -> s.name().equals(done.stage()))
                .findFirst()
                .orElseThrow();
    }

    /** What stops a machine sends it away; it begins anew, so no finished stage spans a stop. */
    @ParameterizedTest
    @EnumSource(names = {"AS_LISTED", "NEAREST_NEXT", "RAINWARD"})
    void noStageIsWorkedInAnHourThatStopsItNorOnABrokenMachineNorAfterHours(Policy policy) {
        SeasonLog log = run(WORLD, policy);

        assertThat(log.sown()).isNotEmpty();
        for (SeasonLog.Sown sown : log.sown()) {
            for (StageRecord done : sown.item().status().stages()) {
                Instant end = done.finishedAt().orElseThrow();
                for (Instant at = done.startedAt().orElseThrow();
                        at.isBefore(end);
                        at = at.plus(STEP)) {
                    mayWork(sown, done, at);
                }
            }
        }
    }

    private static void mayWork(SeasonLog.Sown sown, StageRecord done, Instant at) {
        String what = sown.item().field().name() + " " + done + " at " + at;
        Operation operation = stage(sown, done).operation();
        CrewHours hours = Worlds.SCENE.roster().crew().hours();
        LocalTime clock = at.atZone(Worlds.SCENE.roster().crew().zone()).toLocalTime();

        assertThat(WORLD.stops(sown.item().field().name(), operation, at))
                .as(what)
                .isFalse();
        assertThat(WORLD.luck().broken(done.machine().orElseThrow(), at))
                .as(what)
                .isFalse();
        assertThat(clock).as(what).isAfterOrEqualTo(hours.start()).isBefore(hours.end());
    }

    @Test
    void stagesKeepTheirOrderAndTheirWaits() {
        for (SeasonLog.Sown sown : run(WORLD, Policy.AS_LISTED).sown()) {
            List<StageRecord> stages = sown.item().status().stages();
            for (int s = 1; s < stages.size(); s++) {
                Duration waited = Duration.between(
                        stages.get(s - 1).finishedAt().orElseThrow(),
                        stages.get(s).startedAt().orElseThrow());
                assertThat(waited)
                        .isGreaterThanOrEqualTo(stage(sown, stages.get(s)).leastWait());
            }
        }
    }

    @Test
    void aMachineIsOnOneFieldAtATime() {
        Map<String, List<StageRecord>> byMachine = run(WORLD, Policy.RAINWARD).sown().stream()
                .flatMap(s -> s.item().status().stages().stream())
                .sorted(Comparator.comparing(s -> s.finishedAt().orElseThrow()))
                .collect(Collectors.groupingBy(s -> s.machine().orElseThrow()));

        assertThat(byMachine).isNotEmpty();
        byMachine.values().forEach(records -> {
            for (int r = 1; r < records.size(); r++) {
                assertThat(records.get(r).startedAt().orElseThrow())
                        .isAfterOrEqualTo(records.get(r - 1).finishedAt().orElseThrow());
            }
        });
    }

    @Test
    void aWetFirstWeekPutsEverySeedingOff() {
        int first = Worlds.hour(TRUTH, Worlds.five(0));
        World wet = Worlds.world(
                Worlds.with(TRUTH, rain -> Arrays.fill(rain, first, first + 7 * 24, 1.5)));
        World dry = Worlds.world(
                Worlds.with(TRUTH, rain -> Arrays.fill(rain, first - 24, first + 7 * 24, 0)));

        assertThat(run(wet, Policy.AS_LISTED).sown())
                .allMatch(s -> !s.at().isBefore(Worlds.five(7)));
        assertThat(run(dry, Policy.AS_LISTED).sown())
                .anyMatch(s -> s.at().isBefore(Worlds.five(7)));
    }

    /**
     * Habit sees no further than the day, forecasts seven and a half days, whoever is told the
     * future ten; what comes later cannot move what is done before.
     */
    @ParameterizedTest
    @EnumSource(
            value = Policy.class,
            names = {"AS_LISTED", "RAIN_SOONEST", "RAINWARD", "TOLD_THE_FUTURE"})
    void whatNobodyCanKnowYetChangesNothingThatIsDone(Policy policy) {
        int one = Worlds.hour(TRUTH, Worlds.five(13));
        int other = Worlds.hour(TRUTH, Worlds.five(15));
        World changed = Worlds.world(Worlds.with(TRUTH, rain -> {
            for (int h = 0; h < 24; h++) {
                double mm = rain[one + h];
                rain[one + h] = rain[other + h];
                rain[other + h] = mm;
            }
        }));
        int known = policy == Policy.AS_LISTED ? 13 : policy == Policy.TOLD_THE_FUTURE ? 3 : 5;

        assertThat(before(run(changed, policy), known))
                .isEqualTo(before(run(WORLD, policy), known))
                .isNotEmpty();
    }

    private static List<SeasonLog.Sown> before(SeasonLog log, int day) {
        return log.sown().stream()
                .filter(s -> s.at().isBefore(Worlds.five(day)))
                .toList();
    }

    @Test
    void equalSeasonsAreWorkedAlike() {
        assertThat(run(Worlds.world(Worlds.truth(3)), Policy.RAINWARD))
                .isEqualTo(run(WORLD, Policy.RAINWARD));
    }
}
