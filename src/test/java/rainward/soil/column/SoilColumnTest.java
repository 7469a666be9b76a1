package rainward.soil.column;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rainward.farm.Machine.MassClass;
import rainward.soil.Skies;
import rainward.soil.SoilRun;
import rainward.soil.SoilState;
import rainward.soil.Soils;
import rainward.soil.property.SaxtonRawls;
import rainward.weather.trace.Traces;

/** A field's soil from its past to every trace of what may come. */
class SoilColumnTest {

    private static final SoilColumn LOAM = new SoilColumn(Soils.bare(Soils.LOAM));

    private static List<SoilRun> run(SoilColumn column, Traces traces, Double... depths) {
        SoilState now = column.spinUp(Skies.past(60, 40, 30));
        return column.run(now, traces, List.of(depths), MassClass.MEDIUM);
    }

    @Test
    void oneRunComesBackForEachDepthInOrder() {
        List<SoilRun> runs = run(LOAM, Skies.showers(48, 5, 3), 1.3, 3.8);

        assertThat(runs).extracting(r -> r.seedZone().depthCm()).containsExactly(1.3, 3.8);
        assertThat(runs.get(0).hours()).isEqualTo(48);
        assertThat(runs.get(0).traces()).isEqualTo(5);
        assertThat(runs.get(0).surface()).isSameAs(runs.get(1).surface());
    }

    @Test
    void aDrySpellDriesTheShallowSeedMoreThanTheDeepOne() {
        List<SoilRun> runs = run(LOAM, Skies.rains(120, 0, 0), 1.3, 5.0);

        double shallow = runs.get(0).seedZone().potentialMpa()[119][0];
        double deep = runs.get(1).seedZone().potentialMpa()[119][0];
        assertThat(shallow).isLessThan(deep);
        assertThat(deep).isLessThan(0);
    }

    @Test
    void eachTraceIsTheRunOfItsRainAlone() {
        SoilState now = LOAM.spinUp(Skies.past(60, 50, 10));
        var both = LOAM.run(now, Skies.rains(72, 20, 4, 25), List.of(2.0), MassClass.LIGHT)
                .get(0);
        var alone = LOAM.run(now, Skies.rains(72, 20, 25), List.of(2.0), MassClass.LIGHT)
                .get(0);

        for (int h = 0; h < 72; h++) {
            assertThat(both.seedZone().waterFraction()[h][1])
                    .isCloseTo(alone.seedZone().waterFraction()[h][0], within(1e-12));
        }
    }

    @Test
    void aStateStoredMidwayContinuesAsIfNothingHadHappened() {
        var whole = Skies.past(60, 40, 30);
        SoilState start = LOAM.unknown(whole.air().start(), 23);
        SoilState midway = LOAM.advance(start, Skies.slice(whole, 0, 700));
        SoilState end = LOAM.advance(midway, Skies.slice(whole, 700, 1440));

        SoilState straight = LOAM.advance(start, whole);
        assertThat(end.at()).isEqualTo(straight.at());
        assertThat(end.waterFraction()).containsExactly(straight.waterFraction(), within(1e-12));
        assertThat(end.tempC()).containsExactly(straight.tempC(), within(1e-12));
    }

    @Test
    void aStateOfAnotherHourIsRefused() {
        SoilState late = LOAM.unknown(Skies.START.plusSeconds(3600), 20);

        assertThatThrownBy(
                        () -> LOAM.run(late, Skies.rains(5, 0, 1), List.of(2.0), MassClass.LIGHT))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("after the traces start");
    }

    @Test
    void theUsersWordSetsTheSeedbedAndLeavesTheSubsoil() {
        SoilState told =
                LOAM.spinUp(Skies.past(60, 58, 40)).corrected(SoilState.Word.DRY, LOAM.soil());

        SaxtonRawls loam = SaxtonRawls.of(Soils.LOAM);
        assertThat(told.waterFraction()[1]).isEqualTo(loam.wiltingPointFraction());
        assertThat(told.waterFraction()[6]).isGreaterThan(loam.wiltingPointFraction());
    }
}
