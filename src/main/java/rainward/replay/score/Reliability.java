package rainward.replay.score;

import java.util.ArrayList;
import java.util.List;
import rainward.replay.crew.Policy;

/** Chances that an order gave, held against what came of them. */
public final class Reliability {

    private static final int CLASSES = 5;

    private Reliability() {}

    /**
     * One class of chances.
     *
     * @param toldFraction mean chance that the order gave, 0 to 1
     * @param cameFraction share of fields with a stand by the stand model, 0 to 1
     * @param fields how many
     */
    public record Step(double toldFraction, double cameFraction, int fields) {}

    /** Classes of equal width that hold any field. */
    public static List<Step> of(List<SeasonResult> seasons, Policy policy) {
        double[] told = new double[CLASSES];
        double[] came = new double[CLASSES];
        int[] fields = new int[CLASSES];
        seasons.stream()
                .flatMap(season -> season.by(policy).stream())
                .flatMap(score -> score.fields().stream())
                .filter(field -> !Double.isNaN(field.toldChance()))
                .forEach(field -> {
                    int at = (int) Math.min(CLASSES - 1, field.toldChance() * CLASSES);
                    told[at] += field.toldChance();
                    came[at] += field.model().stand() ? 1 : 0;
                    fields[at]++;
                });
        List<Step> steps = new ArrayList<>();
        for (int c = 0; c < CLASSES; c++) {
            if (fields[c] > 0) {
                steps.add(new Step(told[c] / fields[c], came[c] / fields[c], fields[c]));
            }
        }
        return steps;
    }
}
