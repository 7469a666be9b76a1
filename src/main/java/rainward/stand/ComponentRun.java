package rainward.stand;

import java.util.Arrays;
import rainward.farm.MixComponent;
import rainward.farm.Species;

/**
 * One kind of seed of a mix on one trace, for all seeding hours: the classes of the seed lot
 * germinate, their fates are looked up, and what comes up is added to the tally.
 */
final class ComponentRun {
    private static final int STRIDE = SeedlingFates.STRIDE;

    private final int firstHour;
    private final int seedingHours;
    private final ComponentShare share;
    private final double[] basePotentialsMpa;
    private final Kept kept;
    private final SeedlingFates fates;
    private final boolean tooDeep;
    private final double[] progress;
    private final double[] sums;
    private final double[] scorched;
    private final int[] waiting;
    private final int[] soaking;

    ComponentRun(StandCase question, MixComponent component, StandRules rules) {
        Species species = component.species();
        double depthCm = question.soil().seedZone().depthCm();
        int hours = question.soil().hours();
        firstHour = question.firstHour();
        seedingHours = question.hours().count();
        share = ComponentShare.of(question, component, rules);
        basePotentialsMpa = new HydrothermalTime(species).basePotentialsMpa(rules.seedClasses());
        kept = new Kept(species, hours, rules.seedling());
        fates = new SeedlingFates(species, depthCm, hours, rules.seedling());
        tooDeep = depthCm > species.emergence().greatestDepthCm();
        progress = new double[hours + 1];
        sums = new double[seedingHours * STRIDE];
        scorched = new double[seedingHours];
        waiting = new int[seedingHours];
        soaking = new int[seedingHours];
    }

    /** Runs along a trace and adds what comes of it to the tally. */
    void run(TraceColumns.Column trace, double[] worthByHour, StandTally tally) {
        if (tooDeep) {
            return;
        }
        kept.run(trace);
        fates.reckon(trace, kept, worthByHour);
        Arrays.fill(sums, 0);
        Arrays.fill(scorched, 0);
        Arrays.fill(waiting, 0);
        Arrays.fill(soaking, 0);
        for (double basePotentialMpa : basePotentialsMpa) {
            germinate(basePotentialMpa, trace.feltPotentialMpa);
        }
        hand(tally);
    }

    /**
     * Germinates one class for all seeding hours at once: a seed put in at hour {@code s}
     * germinates in the first hour {@code g} with {@code progress(g + 1) - progress(s) >= 1}, which
     * only moves on as {@code s} does.
     */
    private void germinate(double basePotentialMpa, double[] feltPotentialMpa) {
        for (int h = 0; h < feltPotentialMpa.length; h++) {
            double above = Math.max(0, feltPotentialMpa[h] - basePotentialMpa);
            progress[h + 1] = progress[h] + above * kept.progressPerMpa[h];
        }
        int g = firstHour;
        for (int s = 0; s < seedingHours; s++) {
            double done = progress[firstHour + s] + 1;
            while (g < feltPotentialMpa.length && progress[g + 1] < done) {
                g++;
            }
            if (g == feltPotentialMpa.length) {
                // All seed put in from here on has not started when the trace ends.
                (feltPotentialMpa[g - 1] > basePotentialMpa ? soaking : waiting)[s]++;
                break;
            }
            add(s, g);
        }
    }

    private void add(int s, int g) {
        int to = s * STRIDE;
        int from = g * STRIDE;
        sums[to] += fates.fates[from];
        sums[to + 1] += fates.fates[from + 1];
        sums[to + 2] += fates.fates[from + 2];
        sums[to + 3] += fates.fates[from + 3];
        if (kept.hot()) {
            scorched[s] += fates.scorched[g];
        }
    }

    private void hand(StandTally tally) {
        int waitingNow = 0;
        int soakingNow = 0;
        for (int s = 0; s < seedingHours; s++) {
            waitingNow += waiting[s];
            soakingNow += soaking[s];
            hand(s, waitingNow, soakingNow, tally);
        }
    }

    private void hand(int s, int waits, int soaks, StandTally tally) {
        double classes = basePotentialsMpa.length;
        double before = 1 / kept.rain[firstHour + s];
        double leftAtEnd = kept.rain[kept.rain.length - 1] * before;
        double packed = sums[s * STRIDE + 3];
        double germinated = Math.floor(packed / SeedlingFates.UNDER_WAY);
        double dead = packed - germinated * SeedlingFates.UNDER_WAY;
        double underWay = germinated + soaks;
        double plants = share.plants() / classes;
        double came = plants * before;
        int at = s * STRIDE;
        tally.plants(s, came * sums[at], came * sums[at + 1], came * sums[at + 2]);
        tally.open(s, plants * leftAtEnd * underWay, plants * leftAtEnd * waits);
        double open = underWay + waits;
        double washed =
                classes - dead - open - scorched[s] - before * sums[at] + open * (1 - leftAtEnd);
        double weight = share.weight() / classes;
        tally.losses(
                s,
                weight * dead,
                weight * washed,
                weight * scorched[s],
                weight * waits * leftAtEnd);
    }
}
