package rainward.readiness;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rainward.farm.Require;

/**
 * How ready a field is to be seeded at its next possible hour.
 *
 * @param field its name
 * @param score 0 to 100
 * @param chances chance now and at best
 * @param parts rain, moisture and heat apart, each 0 to 100
 * @param gates what stops it, empty where nothing does
 * @param why what to do, and why, in plain words
 * @param figures behind it, where it was reckoned
 */
public record Readiness(
        String field,
        int score,
        Chances chances,
        Parts parts,
        List<Gate> gates,
        Why why,
        Optional<Figures> figures) {

    public Readiness {
        Require.inRange("score", score, 0, 100);
        gates = List.copyOf(gates);
    }

    /** What to do and why, one line. */
    public String reason() {
        return why.line();
    }

    /** Why alone: for an order that says itself when and with what the field is sown. */
    public String because() {
        return why.sentence();
    }

    /**
     * One line of plain words in two parts.
     *
     * @param opening what to do, may be empty
     * @param because what speaks for it, without a stop
     */
    public record Why(String opening, String because) {
        String line() {
            return opening.isEmpty() ? sentence() : opening + ": " + because + ".";
        }

        String sentence() {
            return Character.toUpperCase(because.charAt(0)) + because.substring(1) + ".";
        }
    }

    /**
     * Chances of a stand.
     *
     * @param mix the mix they hold for
     * @param now seeded at the next possible hour
     * @param best seeded at the best hour of the days ahead
     * @param bestSeedAt that hour, if there is one
     */
    public record Chances(String mix, double now, double best, Optional<Instant> bestSeedAt) {}

    /** The three parts that people ask for, each 0 to 100. */
    public record Parts(int rain, int moisture, int heat) {}

    /**
     * Something that stops the field.
     *
     * @param kind what sort
     * @param words for the user
     */
    public record Gate(Kind kind, String words) {

        /** Sorts of gate. */
        public enum Kind {
            NOT_WORKABLE,
            STAGES_NOT_DONE,
            OUT_OF_SEASON,
            NO_SEED,
            FORECAST_TOO_OLD,
            NO_FORECAST,
            HELD,
            NOT_WAITING
        }
    }
}
