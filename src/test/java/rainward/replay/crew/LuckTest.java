package rainward.replay.crew;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rainward.farm.Machine;
import rainward.farm.Window;

class LuckTest {

    private static final Instant FROM = Worlds.five(0);
    private static final Window SEASON = new Window(FROM, FROM.plus(Duration.ofDays(42)));
    private static final List<Machine> MACHINES = Worlds.SCENE.roster().crew().machines();

    /** A breakdown in 160 hours of the calendar and 6 hours of repair: 6 of 166 are lost. */
    @Test
    void machinesAreDownForTheirShareOfTheSeason() {
        String machine = MACHINES.get(0).name();
        int down = 0;
        int hours = 0;
        for (long seed = 0; seed < 400; seed++) {
            Luck luck = new Luck(MACHINES, SEASON, seed);
            for (int h = 0; h < 42 * 24; h++) {
                down += luck.broken(machine, FROM.plus(Duration.ofHours(h))) ? 1 : 0;
                hours++;
            }
        }
        assertThat((double) down / hours).isCloseTo(6.0 / 166, within(0.004));
    }

    @Test
    void paceIsOffByFifteenPercentAndOnTheWholeRight() {
        double[] logs = IntStream.range(0, 4000)
                .mapToDouble(i -> Math.log(new Luck(MACHINES, SEASON, i).slowness("Ford", "till")))
                .toArray();
        double mean = DoubleStream.of(logs).average().orElseThrow();
        double spread = Math.sqrt(DoubleStream.of(logs)
                .map(x -> (x - mean) * (x - mean))
                .average()
                .orElseThrow());

        assertThat(mean).isCloseTo(0, within(0.01));
        assertThat(spread).isCloseTo(0.15, within(0.01));
    }

    @Test
    void everyPolicyOfASeasonMeetsTheSame() {
        World world = Worlds.world(Worlds.truth(1));
        Instant noon = FROM.plus(Duration.ofHours(7));
        String property = Worlds.SCENE.fields().get(0).property();

        assertThat(world.forecast(property, noon)).isSameAs(world.forecast(property, FROM));
        assertThat(world.luck().slowness("Ford", "till"))
                .isEqualTo(Worlds.world(Worlds.truth(1)).luck().slowness("Ford", "till"));
    }
}
