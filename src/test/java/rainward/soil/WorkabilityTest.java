package rainward.soil;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.farm.Machine.MassClass;
import rainward.farm.SoilTexture;
import rainward.soil.column.SoilColumn;

/** When ground is fit to work again. */
class WorkabilityTest {

    private static final int HOURS = 240;

    static List<SoilTexture> textures() {
        return Soils.ALL;
    }

    private static WorkableFrom after(SoilTexture texture, MassClass machine, double... rainsMm) {
        SoilColumn column = new SoilColumn(new FieldSoil(texture, 0.02, SurfaceCondition.TILLED));
        SoilState now = column.unknown(Skies.START, 22);
        SoilRun run = column.run(now, Skies.rains(HOURS, 2, rainsMm), List.of(2.0), machine)
                .get(0);
        return WorkableFrom.of(run, 6);
    }

    @ParameterizedTest
    @MethodSource("textures")
    void moreRainNeverMakesGroundWorkableSooner(SoilTexture texture) {
        SplittableRandom random = new SplittableRandom(20260710);
        for (int round = 0; round < 20; round++) {
            double less = random.nextDouble(60);
            double more = less + random.nextDouble(40);
            int[] hours = after(texture, MassClass.MEDIUM, less, more).hours();
            assertThat(hours[1])
                    .as("%s mm against %s mm", more, less)
                    .isGreaterThanOrEqualTo(hours[0]);
        }
    }

    @Test
    void aHeavierMachineNeverGoesSooner() {
        for (SoilTexture texture : Soils.ALL) {
            int light = after(texture, MassClass.LIGHT, 30).hours()[0];
            int medium = after(texture, MassClass.MEDIUM, 30).hours()[0];
            int heavy = after(texture, MassClass.HEAVY, 30).hours()[0];
            assertThat(medium).isGreaterThanOrEqualTo(light);
            assertThat(heavy).isGreaterThanOrEqualTo(medium);
        }
    }

    /** Clay holds on to water for weeks where sand lets go in days (Jabro and others 2009). */
    @Test
    void sandIsFitLongBeforeClay() {
        int sand = after(Soils.SAND, MassClass.MEDIUM, 30).hours()[0];
        int clay = after(Soils.CLAY, MassClass.MEDIUM, 30).hours()[0];
        assertThat(sand).isLessThan(96);
        assertThat(clay).isGreaterThan(sand + 24);
    }

    @Test
    void theChanceCountsTraces() {
        WorkableFrom from = new WorkableFrom(new int[] {3, 10, 20, 48}, 48);

        assertThat(from.chanceBy(2)).isZero();
        assertThat(from.chanceBy(10)).isEqualTo(0.5);
        assertThat(from.hourWithChance(0.75)).hasValue(20);
        assertThat(from.hourWithChance(0.8)).isEmpty();
    }
}
