package rainward.queue.search;

import java.util.List;
import java.util.SplittableRandom;

/**
 * Simulated annealing with restarts (Kirkpatrick, Gelatt and Vecchi 1983): each round cools from a
 * temperature learnt from the changes at hand, and starts from the best genome known so far.
 */
public final class Annealing {

    private static final int ROUNDS = 1;
    private static final int SAMPLES = 40;

    /**
     * First temperature against the mean change in value of a random move; chosen by experiment.
     */
    private static final double HOT = 0.7;

    /** Last temperature against the first; chosen by experiment. */
    private static final double COOLING = 0.05;

    /** Later rounds start cooler: they repair what is good already; chosen by experiment. */
    private static final double REHEAT = 0.5;

    private static final int TRIES_A_STEP = 32;

    private final Decoding decoding;
    private final SplittableRandom random;
    private Genome best;
    private double bestValue = Double.NEGATIVE_INFINITY;
    private long tries;

    private Annealing(Decoding decoding, Genome first, long seed) {
        this.decoding = decoding;
        random = new SplittableRandom(seed);
        best = first;
    }

    /**
     * What was found.
     *
     * @param best genome
     * @param value of it
     * @param tries how many genomes were valued
     */
    public record Found(Genome best, double value, long tries) {}

    /**
     * Searches from the best of some starts.
     *
     * @param decoding values genomes
     * @param starts not empty
     * @param effort when to stop, with which random numbers
     * @return the best genome met
     */
    public static Found search(Decoding decoding, List<Genome> starts, Effort effort) {
        Annealing search = new Annealing(decoding, starts.get(0), effort.seed());
        search.consider(starts.get(0));
        for (Genome start : starts.subList(1, starts.size())) {
            if (effort.spent(search.tries) < 1) {
                search.consider(start);
            }
        }
        for (int round = 0; round < ROUNDS; round++) {
            search.round(effort, round);
        }
        return new Found(search.best.copy(), search.bestValue, search.tries);
    }

    private void consider(Genome genome) {
        tries++;
        note(genome, decoding.tryOut(genome, Decoding.Change.EVERYWHERE));
    }

    private void note(Genome genome, double value) {
        if (value > bestValue) {
            bestValue = value;
            best = genome.copy();
        }
    }

    private void round(Effort effort, int round) {
        Moves moves = new Moves(decoding, best, random);
        double value = decoding.tryOut(moves.current(), Decoding.Change.EVERYWHERE);
        decoding.keep();
        double hot = HOT * meanChange(moves, value) * (round == 0 ? 1 : REHEAT);
        double begin = (double) round / ROUNDS;
        double end = (double) (round + 1) / ROUNDS;
        double spent = effort.spent(tries);
        while (spent < end) {
            double cooled = Math.max(0, (spent - begin) / (end - begin));
            double temperature = hot * Math.pow(COOLING, cooled) + Double.MIN_NORMAL;
            for (int i = 0; i < TRIES_A_STEP; i++) {
                value = step(moves, value, temperature);
            }
            spent = effort.spent(tries);
        }
    }

    private double meanChange(Moves moves, double value) {
        double sum = 0;
        for (int i = 0; i < SAMPLES; i++) {
            sum += Math.abs(decoding.tryOut(moves.next(), moves.change()) - value);
            moves.reject();
        }
        tries += SAMPLES;
        return sum / SAMPLES;
    }

    private double step(Moves moves, double value, double temperature) {
        double tried = decoding.tryOut(moves.next(), moves.change());
        tries++;
        double worse = value - tried;
        if (worse > 0 && random.nextDouble() >= Math.exp(-worse / temperature)) {
            moves.reject();
            return value;
        }
        decoding.keep();
        moves.accept();
        note(moves.current(), tried);
        return tried;
    }
}
