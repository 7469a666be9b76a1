package rainward.soil.column;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rainward.farm.Machine.MassClass;
import rainward.soil.Skies;
import rainward.soil.SoilRun;
import rainward.soil.SoilState;
import rainward.soil.Soils;

/** The drying front against the potential at sowing depth: one soil, told twice. */
class DryFrontTest {
    private static final double WILTING_POINT_MPA = -1.5;

    @Test
    void seedIsBelowWiltingPointWhereTheFrontHasPassedIt() {
        SoilColumn loam = new SoilColumn(Soils.bare(Soils.LOAM));
        SoilState dry = loam.spinUp(Skies.past(60, 30, 30));
        List<Double> depths = List.of(0.8, 1.3, 1.6);
        List<SoilRun> runs =
                loam.run(dry, Skies.rains(240, 60, 0, 6, 12, 25), depths, MassClass.MEDIUM);
        int passed = 0;
        for (SoilRun run : runs) {
            double depthCm = run.seedZone().depthCm();
            for (int h = 0; h < run.hours(); h++) {
                for (int i = 0; i < run.traces(); i++) {
                    double frontCm = run.surface().dryFrontCm()[h][i];
                    double mpa = run.seedZone().potentialMpa()[h][i];
                    // Where the two are closer than the tension table is fine, either may be right.
                    // Rain on a dry bed wets from above: the front is gone, the seed still dry.
                    boolean told = i == 0 || frontCm > depthCm;
                    if (told && Math.abs(frontCm - depthCm) > 0.05) {
                        assertThat(mpa < WILTING_POINT_MPA)
                                .as("front %s cm, seed %s cm, %s MPa", frontCm, depthCm, mpa)
                                .isEqualTo(frontCm > depthCm);
                        passed += frontCm > depthCm ? 1 : 0;
                    }
                }
            }
        }
        assertThat(passed).isGreaterThan(100);
    }
}
