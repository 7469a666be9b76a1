package rainward.replay.crew;

import java.time.Instant;
import java.util.List;
import rainward.farm.FieldCase;

/**
 * What a crew did in a season.
 *
 * @param sown what was seeded, in order of time
 * @param roadKm that machines drove [km]
 * @param idleDays of the crew with fields open and no machine at work
 * @param changes of the order that the crew had been told
 */
public record SeasonLog(List<Sown> sown, double roadKm, int idleDays, int changes) {

    public SeasonLog {
        sown = List.copyOf(sown);
    }

    /**
     * A field that was seeded.
     *
     * @param item with what was done to it
     * @param mix that went in
     * @param at end of the seeding
     * @param chance that the order gave it, 0 to 1; NaN where none was told
     */
    public record Sown(FieldCase item, String mix, Instant at, double chance) {}
}
