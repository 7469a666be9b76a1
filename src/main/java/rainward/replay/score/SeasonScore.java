package rainward.replay.score;

import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import rainward.replay.crew.Policy;
import rainward.replay.crew.SeasonLog;
import rainward.replay.crew.World;
import rainward.replay.score.FieldResult.Cause;
import rainward.replay.score.FieldResult.Fate;

/**
 * What one policy brought in one season.
 *
 * @param policy that chose
 * @param model judged by the stand model
 * @param plain judged by the plain rule
 * @param effort that it took
 * @param fields each seeded field
 */
public record SeasonScore(
        Policy policy, Sums model, Sums plain, Effort effort, List<FieldResult> fields) {

    public SeasonScore {
        fields = List.copyOf(fields);
    }

    /**
     * Sums over fields.
     *
     * @param establishedHa area with a stand [ha]
     * @param worthHa sum of area x priority x worth [ha]
     * @param falseStarts fields without a stand, most of whose seed started and dried out
     * @param washedOut fields without a stand, most of whose seed was washed or sealed in
     */
    public record Sums(double establishedHa, double worthHa, int falseStarts, int washedOut) {

        static Sums of(List<FieldResult> fields, Function<FieldResult, Fate> judged) {
            ToDoubleFunction<FieldResult> worth =
                    f -> f.areaHa() * f.priority() * judged.apply(f).worth();
            return new Sums(
                    fields.stream()
                            .filter(f -> judged.apply(f).stand())
                            .mapToDouble(FieldResult::areaHa)
                            .sum(),
                    fields.stream().mapToDouble(worth).sum(),
                    count(fields, judged, Cause.FALSE_START),
                    count(fields, judged, Cause.WASHED_OUT));
        }

        private static int count(
                List<FieldResult> fields, Function<FieldResult, Fate> judged, Cause cause) {
            return (int) fields.stream()
                    .filter(f -> judged.apply(f).cause() == cause)
                    .count();
        }
    }

    /**
     * What it took.
     *
     * @param seededHa area that seed went into [ha]
     * @param roadKm that machines drove [km]
     * @param idleDays of the crew with fields open
     * @param changes of the order that the crew had been told
     */
    public record Effort(double seededHa, double roadKm, int idleDays, int changes) {}

    /** Judges what a crew did. */
    public static SeasonScore of(Policy policy, SeasonLog log, World world) {
        Harvest harvest = new Harvest(world);
        List<FieldResult> fields = log.sown().stream().map(harvest::of).toList();
        return new SeasonScore(
                policy,
                Sums.of(fields, FieldResult::model),
                Sums.of(fields, FieldResult::plain),
                new Effort(
                        fields.stream().mapToDouble(FieldResult::areaHa).sum(),
                        log.roadKm(),
                        log.idleDays(),
                        log.changes()),
                fields);
    }
}
