package rainward.replay.score;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import rainward.replay.crew.Policy;
import rainward.replay.score.FieldResult.Cause;

/** Where one policy lost fields that another got up, and to what. */
public final class Losses {

    private Losses() {}

    /**
     * Fields that one policy lost and the other got up, less those the other way round.
     *
     * @param cause what took them; empty: never seeded
     * @param lost fields that only the other got up
     * @param won fields that only this one got up, which took the other's
     */
    public record Line(Optional<Cause> cause, int lost, int won) {}

    /** Field by field over all seasons, the greatest loss first. */
    public static List<Line> of(List<SeasonResult> seasons, Policy policy, Policy other) {
        Map<String, int[]> counts = new TreeMap<>();
        for (SeasonResult season : seasons) {
            Map<String, FieldResult> own = fields(season, policy);
            Map<String, FieldResult> others = fields(season, other);
            others.forEach((name, field) -> {
                if (field.model().stand() && !stood(own, name)) {
                    counts.computeIfAbsent(cause(own, name), c -> new int[2])[0]++;
                }
            });
            own.forEach((name, field) -> {
                if (field.model().stand() && !stood(others, name)) {
                    counts.computeIfAbsent(cause(others, name), c -> new int[2])[1]++;
                }
            });
        }
        List<Line> lines = new ArrayList<>();
        counts.forEach((cause, count) -> lines.add(new Line(
                cause.isEmpty() ? Optional.empty() : Optional.of(Cause.valueOf(cause)),
                count[0],
                count[1])));
        lines.sort(Comparator.comparingInt(line -> line.won() - line.lost()));
        return lines;
    }

    private static Map<String, FieldResult> fields(SeasonResult season, Policy policy) {
        return season.by(policy).map(SeasonScore::fields).orElse(List.of()).stream()
                .collect(Collectors.toMap(FieldResult::field, Function.identity(), (a, b) -> b));
    }

    private static boolean stood(Map<String, FieldResult> fields, String name) {
        return Optional.ofNullable(fields.get(name))
                .map(field -> field.model().stand())
                .orElse(false);
    }

    private static String cause(Map<String, FieldResult> fields, String name) {
        return Optional.ofNullable(fields.get(name))
                .map(field -> field.model().cause().name())
                .orElse("");
    }
}
