package rainward.weather.trace;

import rainward.farm.Require;
import rainward.farm.Window;

/**
 * How traces are to be drawn.
 *
 * @param traces how many courses at each point; 200 is usual
 * @param seed same seed, same traces
 * @param horizon to be covered; widened to whole hours
 * @param dependence how rain hangs together in time and from farm to farm
 */
public record TraceSettings(int traces, long seed, Window horizon, Dependence dependence) {

    public TraceSettings {
        Require.inRange("traces", traces, 1, 10_000);
    }

    /** Settings with the usual dependence. */
    public TraceSettings(int traces, long seed, Window horizon) {
        this(traces, seed, horizon, Dependence.USUAL);
    }

    /**
     * Correlation of the Gaussian field behind the rain: {@code exp(-d/d0) exp(-t/t0)}.
     *
     * @param decorrelationKm distance d0 at which it has fallen to 1/e [km]
     * @param persistenceHours time t0 in which it falls to 1/e [h]
     */
    public record Dependence(double decorrelationKm, double persistenceHours) {

        /**
         * 40 km: the form is that of Ciach and Krajewski 2006, the length lies between the 10 to 30
         * km of summer hours and the 50 to 100 km of days (both from memory). 21 h: a lag-one-day
         * correlation of wet and dry of 0.20 at 31 % wet days (first-order Markov chain p01 0.25,
         * p11 0.45) asks for 0.32 in the field, and exp(-24/21) is that.
         */
        public static final Dependence USUAL = new Dependence(40, 21);

        public Dependence {
            Require.inRange("decorrelationKm", decorrelationKm, 0.1, 10_000);
            Require.inRange("persistenceHours", persistenceHours, 0.1, 1_000);
        }
    }
}
