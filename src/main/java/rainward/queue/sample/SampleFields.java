package rainward.queue.sample;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.GeoPoint;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.farm.SeedingMethod;
import rainward.farm.SoilTexture;
import rainward.farm.Stage;
import rainward.farm.StageLimits;
import rainward.farm.StageRecord;
import rainward.queue.problem.Job;

/** Invented fields: 0.2 to 4.9 ha, on loam or heavier ground, some with work done already. */
final class SampleFields {

    private static final int HOURS = GeneratedDays.HORIZON_HOURS;
    private static final Instant DONE_AT = Instant.parse("2026-07-11T18:00:00Z");

    private SampleFields() {}

    /** Spread, disk, till within ten days of it, seed within three of that. */
    static final Recipe RECIPE = new Recipe(
            "small seed",
            List.of(
                    stage("spread", Operation.SPREAD, Duration.ZERO, Optional.empty()),
                    stage("disk", Operation.DISK, Duration.ZERO, Optional.empty()),
                    stage(
                            "till",
                            Operation.TILL,
                            Duration.ofHours(4),
                            Optional.of(Duration.ofDays(10))),
                    new Stage(
                            "seed",
                            Operation.SEED,
                            Duration.ZERO,
                            Optional.of(Duration.ofDays(3)),
                            StageLimits.seedingBy(SeedingMethod.ROLLED))));

    private static Stage stage(
            String name, Operation operation, Duration least, Optional<Duration> greatest) {
        boolean soil = operation != Operation.SPREAD;
        StageLimits limits = new StageLimits(
                soil,
                soil ? OptionalDouble.empty() : OptionalDouble.of(7),
                OptionalDouble.empty(),
                Duration.ZERO,
                Optional.empty(),
                false);
        return new Stage(name, operation, least, greatest, limits);
    }

    static Job job(
            int index,
            int property,
            GeoPoint place,
            SampleWeather weather,
            SplittableRandom random) {
        double areaHa = Math.min(4.9, Math.max(0.2, 1.5 * Math.exp(0.7 * random.nextGaussian())));
        double clay = random.nextDouble(0.08, 0.4);
        String name = String.format("F%02d", index + 1);
        Field field = new Field(
                name,
                "property " + (property + 1),
                place,
                areaHa,
                new Field.Ground(new SoilTexture(0.4, clay, 2.5), 0.02),
                new Field.Wish(
                        List.of("brassica", "rye"),
                        RECIPE.name(),
                        random.nextDouble() < 0.2 ? 1.5 : 1));
        FieldStatus status = status(random.nextInt(6));
        return new Job(
                new FieldCase(field, status),
                RECIPE,
                place,
                options(weather, clay, random),
                stopped(weather, clay));
    }

    private static FieldStatus status(int lot) {
        int done = lot < 2 ? 0 : lot - 2;
        List<StageRecord> stages = new ArrayList<>();
        for (int i = 0; i < done; i++) {
            stages.add(new StageRecord(
                    RECIPE.stages().get(i).name(),
                    Optional.empty(),
                    Optional.of(DONE_AT.plusSeconds(3600L * i)),
                    Optional.empty()));
        }
        return new FieldStatus(
                done == 0 ? FieldState.PENDING : FieldState.IN_WORK,
                stages,
                Optional.empty(),
                Optional.empty(),
                false);
    }

    private static List<Job.MixOption> options(
            SampleWeather weather, double clay, SplittableRandom random) {
        double level = random.nextDouble(0.85, 1.1);
        double[] chance = new double[HOURS];
        double[] worth = new double[HOURS];
        double[] late = new double[HOURS];
        for (int h = 0; h < HOURS; h++) {
            chance[h] = Math.min(0.97, level * chance(weather, clay, h));
            worth[h] = chance[h] * (1 - 0.02 * h / 24.0);
            late[h] = 0.35 * Math.min(1, chance[h] + 0.2);
        }
        return List.of(
                new Job.MixOption("brassica", chance, worth),
                new Job.MixOption("rye", chance, late));
    }

    /** Seed that lies ready when rain comes stands best; after it, moist ground dries out again. */
    private static double chance(SampleWeather weather, double clay, int hour) {
        double fails = 1 - weather.dryChance();
        for (SampleWeather.Storm s : weather.storms()) {
            double ahead = s.startHour() - hour;
            double weight = Math.min(1, s.rainMm() / 12) * s.probability();
            double good = ahead >= 0
                    ? 0.85 * Math.exp(-ahead / 90)
                    : 0.6 * Math.exp(ahead / (40 + 100 * clay));
            fails *= 1 - weight * good;
        }
        return 1 - fails;
    }

    private static Map<Operation, BitSet> stopped(SampleWeather weather, double clay) {
        BitSet wet = new BitSet();
        for (SampleWeather.Storm s : weather.storms()) {
            double drying = s.rainMm() * (0.5 + 4 * clay);
            if (s.probability() > 0.5) {
                wet.set((int) Math.min(HOURS, s.startHour()), (int)
                        Math.min(HOURS, s.startHour() + s.lengthHours() + drying));
            }
        }
        BitSet wind = (BitSet) wet.clone();
        for (int d = 0; d < weather.windy().length; d++) {
            if (weather.windy()[d]) {
                wind.set(24 * d + 13, 24 * d + 18);
            }
        }
        Map<Operation, BitSet> stopped = new EnumMap<>(Operation.class);
        stopped.put(Operation.SPREAD, wind);
        for (Operation o : List.of(Operation.DISK, Operation.TILL, Operation.SEED)) {
            stopped.put(o, wet);
        }
        return stopped;
    }
}
