package rainward.queue.shop;

import rainward.queue.search.Decoding;
import rainward.queue.search.Genome;

/** A permutation flow shop: jobs pass all machines in the same order; less makespan is better. */
public final class FlowShop implements Decoding {

    private final int[][] minutes;

    /** Takes times by machine and job. */
    public FlowShop(int[][] minutes) {
        this.minutes = minutes;
    }

    /**
     * Taillard's instances (1993, EJOR 64:278-285): times 1 to 99 from the minimal standard
     * generator of Lehmer, machine by machine.
     */
    public static FlowShop taillard(long seed, int jobs, int machines) {
        int[][] minutes = new int[machines][jobs];
        long x = seed;
        for (int m = 0; m < machines; m++) {
            for (int j = 0; j < jobs; j++) {
                x = 16_807 * x % 2_147_483_647L;
                minutes[m][j] = 1 + (int) (x / 2_147_483_647.0 * 99);
            }
        }
        return new FlowShop(minutes);
    }

    public int makespan(int[] order) {
        int[] free = new int[minutes.length];
        for (int job : order) {
            int before = 0;
            for (int m = 0; m < free.length; m++) {
                free[m] = Math.max(free[m], before) + minutes[m][job];
                before = free[m];
            }
        }
        return free[free.length - 1];
    }

    @Override
    public int items() {
        return minutes[0].length;
    }

    @Override
    public int places() {
        return items();
    }

    @Override
    public int kinship(int item) {
        return item;
    }

    @Override
    public int pinned() {
        return 0;
    }

    @Override
    public int choices(int gene) {
        return 1;
    }

    @Override
    public int genes() {
        return 0;
    }

    @Override
    public double tryOut(Genome genome, Change change) {
        return -makespan(genome.order());
    }

    @Override
    public void keep() {
        // Nothing is remembered: every order is valued from its start.
    }
}
