package rainward.stand.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rainward.farm.Machine.MassClass;
import rainward.farm.Mix;
import rainward.intake.Shipped;
import rainward.soil.FieldSoil;
import rainward.soil.Skies;
import rainward.soil.SoilState;
import rainward.soil.SurfaceCondition;
import rainward.soil.column.SoilColumn;
import rainward.stand.Seedbeds;
import rainward.stand.SeedingHours;
import rainward.stand.StandCase;
import rainward.weather.trace.Foreseen;
import rainward.weather.trace.Traces;

/** What it costs that traces share their later weather, a fifth as many courses as traces. */
class LaterCoursesTest {
    private static final int AHEAD = 240;
    private static final int LATER = 264;
    private static final int TRACES = 200;
    private static final int SEEDING_HOURS = 168;
    private static final Mix MIX = Shipped.mix("turnip and rape");

    private final FieldSoil soil = new FieldSoil(Seedbeds.SILT_LOAM, 0.02, SurfaceCondition.FIRMED);
    private final SoilColumn column = new SoilColumn(soil);

    /** Two hundred traces leave a chance of one half uncertain by 0.035. */
    @Test
    void sharedCoursesMoveTheChanceByLessThanTheTracesDo() {
        double off = 0;
        double told = 0;
        for (int seed = 1; seed <= 4; seed++) {
            Traces all = storms(AHEAD + LATER, TRACES, seed);
            double[] whole = chance(new Foreseen(all, Optional.empty()));
            double[] shared = chance(new Foreseen(
                    cut(all, 0, AHEAD, TRACES),
                    Optional.of(cut(all, AHEAD, AHEAD + LATER, TRACES / 5))));
            for (int h = 0; h < SEEDING_HOURS; h++) {
                off += Math.abs(whole[h] - shared[h]) / SEEDING_HOURS / 4;
                told += whole[h] / SEEDING_HOURS / 4;
            }
        }
        assertThat(told).as("mean chance, so that there is something to miss").isBetween(0.2, 0.8);
        assertThat(off).isLessThan(0.035);
        System.out.printf("mean chance %.3f, shared courses off by %.4f%n", told, off);
    }

    private double[] chance(Foreseen weather) {
        SoilState dry = column.unknown(Skies.START, 24).corrected(SoilState.Word.DRY, soil);
        var runs = column.run(dry, weather, List.of(1.3), MassClass.LIGHT);
        Optional<StandCase.Later> later = weather.later()
                .map(l -> new StandCase.Later(runs.later().get(0), l, runs.courseOf()));
        return StandModel.usual()
                .outlook(new StandCase(
                        MIX,
                        Seedbeds.FIRM_AND_FLAT,
                        runs.ahead().get(0),
                        weather.traces(),
                        new SeedingHours(Skies.START, SEEDING_HOURS, Seedbeds.DETROIT),
                        later))
                .chance();
    }

    /** A storm of four hours in one day of nine or so on each trace. */
    private static Traces storms(int hours, int count, long seed) {
        SplittableRandom sky = new SplittableRandom(seed);
        double[][] rain = new double[hours][count];
        for (int i = 0; i < count; i++) {
            for (int h = 0; h + 4 <= hours; h += 4) {
                if (sky.nextDouble() < 0.02) {
                    double mm = 5 + sky.nextDouble(20);
                    for (int t = h; t < h + 4; t++) {
                        rain[t][i] = mm / 4;
                    }
                }
            }
        }
        return traces(0, rain);
    }

    private static Traces traces(int from, double[][] rain) {
        double[][] peak = Arrays.stream(rain)
                .map(row -> Arrays.stream(row).map(mm -> 1.668 * mm).toArray())
                .toArray(double[][]::new);
        var start = Skies.START.plusSeconds(3600L * from);
        return new Traces(Skies.air(start, rain.length), Skies.sun(rain.length), rain, peak);
    }

    private static Traces cut(Traces all, int from, int to, int count) {
        return traces(
                from,
                Arrays.stream(all.rainMm(), from, to)
                        .map(row -> Arrays.copyOf(row, count))
                        .toArray(double[][]::new));
    }
}
