package rainward.replay.crew;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;

/** Says what comes next, by one policy. */
interface Foreman {

    /** Looks at everything anew, weather and ground included. */
    void consider(Instant now, List<FieldWork> fields);

    /** An hour has gone by since; whoever has something to change changes it. */
    default void goOn(Instant now, List<FieldWork> fields) {}

    /**
     * What a free machine should go for, the best first; the first that can be done is taken.
     *
     * @param machine that is free
     * @param at where it stands
     * @param now the moment
     * @param open fields that still wait
     */
    List<Wanted> wanted(Machine machine, GeoPoint at, Instant now, List<FieldWork> open);

    /** How often fields near the top of the order that was given out changed places. */
    int changes();

    /**
     * A field to go for.
     *
     * @param work on it
     * @param mix to sow there; empty: the first of its wishes that is in season
     * @param chance told of a stand, where one was; 0 to 1, else NaN
     */
    record Wanted(FieldWork work, Optional<String> mix, double chance) {

        static Wanted plain(FieldWork work) {
            return new Wanted(work, Optional.empty(), Double.NaN);
        }
    }
}
