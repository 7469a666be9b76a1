package rainward.replay.score;

import java.time.Instant;

/**
 * What came of one seeded field.
 *
 * @param field its name
 * @param mix that went in
 * @param seededAt when
 * @param areaHa of the field [ha]
 * @param priority of a hectare of it
 * @param toldChance chance of a stand that the order gave it, 0 to 1; NaN where none was told
 * @param model what the stand model says under the weather that came
 * @param plain what the plain rule says
 */
public record FieldResult(
        String field,
        String mix,
        Instant seededAt,
        double areaHa,
        double priority,
        double toldChance,
        Fate model,
        Fate plain) {

    /**
     * One judgement.
     *
     * @param stand true where a stand came up
     * @param worth of it, 0 to 1
     * @param cause what it was lost to
     */
    public record Fate(boolean stand, double worth, Cause cause) {}

    /** What took a field. */
    public enum Cause {
        NOTHING,
        FALSE_START,
        WASHED_OUT,
        HEAT,
        DRY
    }
}
