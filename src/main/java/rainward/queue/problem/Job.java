package rainward.queue.problem;

import java.util.BitSet;
import java.util.List;
import java.util.Map;
import rainward.farm.FieldCase;
import rainward.farm.FieldStatus;
import rainward.farm.GeoPoint;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.farm.Require;

/**
 * A field in the queue.
 *
 * @param field as it lies and stands
 * @param recipe its chain of stages
 * @param arrival where machines arrive: the property's place
 * @param options what may be sown, the wanted mix first
 * @param stopped hours of the horizon in which an operation must not go on there: wet soil, wind
 * @param firmedByRain hours of the horizon in which seeding may end so that, at the chosen
 *     confidence, a fair rain firms the seedbed in time
 * @param kept what it is worth where its seed is kept for days after those planned
 * @param fillings how it empties machines, as far as that is known
 */
public record Job(
        FieldCase field,
        Recipe recipe,
        GeoPoint arrival,
        List<MixOption> options,
        Map<Operation, BitSet> stopped,
        BitSet firmedByRain,
        Kept kept,
        Fillings fillings) {

    public Job {
        options = List.copyOf(options);
        stopped = Map.copyOf(stopped);
        firmedByRain = (BitSet) firmedByRain.clone();
    }

    /** A field that is worth nothing if its seed does not go in on the days planned. */
    public Job(
            FieldCase field,
            Recipe recipe,
            GeoPoint arrival,
            List<MixOption> options,
            Map<Operation, BitSet> stopped,
            BitSet firmedByRain) {
        this(field, recipe, arrival, options, stopped, firmedByRain, Kept.NOTHING, Fillings.NONE);
    }

    /** A field whose seedbed no rain will firm. */
    public Job(
            FieldCase field,
            Recipe recipe,
            GeoPoint arrival,
            List<MixOption> options,
            Map<Operation, BitSet> stopped) {
        this(field, recipe, arrival, options, stopped, new BitSet());
    }

    /** The field's name. */
    public String name() {
        return field.field().name();
    }

    /** The same field with other work done. */
    public Job with(FieldStatus status) {
        return new Job(
                new FieldCase(field.field(), status),
                recipe,
                arrival,
                options,
                stopped,
                firmedByRain,
                kept,
                fillings);
    }

    /** The same field where it is known how it empties machines. */
    public Job filling(Fillings others) {
        return new Job(field, recipe, arrival, options, stopped, firmedByRain, kept, others);
    }

    /** Priority x area, what worth is multiplied with [ha]. */
    public double weightHa() {
        return field.field().wish().priority() * field.field().areaHa();
    }

    /** What it is worth where its seed is kept; a pinned field's seed is not kept. */
    @Override
    public Kept kept() {
        return field.status().pinnedFirst() ? Kept.NOTHING : kept;
    }

    /**
     * What a field is expected to be worth whose seed goes in after the days planned.
     *
     * @param readyWorth where all work before seeding is done by then, 0 to 1
     * @param rawWorth where some of it is still to do, 0 to 1
     */
    public record Kept(double readyWorth, double rawWorth) {

        /** Seed that does not go in on the days planned never will. */
        public static final Kept NOTHING = new Kept(0, 0);

        public Kept {
            Require.inRange("readyWorth", readyWorth, 0, 1);
            Require.inRange("rawWorth", rawWorth, 0, readyWorth);
        }
    }

    /**
     * What a mix earns on this field.
     *
     * @param mix its name
     * @param chance of a stand by seeding hour of the horizon, 0 to 1; zero out of season
     * @param worth expected worth by seeding hour of the horizon, 0 to 1; zero out of season
     */
    public record MixOption(String mix, double[] chance, double[] worth) {}
}
