package rainward.stand;

import java.time.Instant;
import java.util.Collections;
import java.util.List;
import rainward.farm.Require;

/**
 * The chance of a stand of one mix on one field, by the hour that seed goes in.
 *
 * @param mix its name
 * @param start first seeding hour, UTC; entry {@code h} is seed put in during hour {@code start +
 *     h}
 * @param chance share of traces in which the stand reaches its target, 0 to 1
 * @param worth expected worth: over traces, share of the target reached x worth of the emergence
 *     date, 0 to the mix's full worth
 * @param emergence when it comes up, by seeding hour
 * @param losses what kills it, by seeding hour
 */
public record StandOutlook(
        String mix,
        Instant start,
        double[] chance,
        double[] worth,
        List<EmergenceRange> emergence,
        List<Losses> losses) {

    public StandOutlook {
        emergence = List.copyOf(emergence);
        losses = List.copyOf(losses);
        Require.that(worth.length == chance.length, "worth and chance differ in hours");
        Require.that(emergence.size() == chance.length, "emergence and chance differ in hours");
        Require.that(losses.size() == chance.length, "losses and chance differ in hours");
    }

    /** The outlook of a mix that must not be sown in any of these hours. */
    public static StandOutlook never(String mix, SeedingHours hours) {
        return new StandOutlook(
                mix,
                hours.start(),
                new double[hours.count()],
                new double[hours.count()],
                Collections.nCopies(hours.count(), EmergenceRange.NEVER),
                Collections.nCopies(hours.count(), new Losses(0, 0, 0, 0)));
    }

    public int seedingHours() {
        return chance.length;
    }

    /**
     * Days from seeding to the mean emergence of the stand, over the traces where one comes up.
     *
     * @param p10Days one trace in ten is faster [d]
     * @param p50Days the middle trace [d]
     * @param p90Days one trace in ten is slower [d]
     */
    public record EmergenceRange(double p10Days, double p50Days, double p90Days) {

        /** Where nothing comes up on any trace, or seed must not go in. */
        public static final EmergenceRange NEVER = new EmergenceRange(
                Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

        /** True where there is something to date. */
        public boolean known() {
            return p50Days < Double.POSITIVE_INFINITY;
        }
    }

    /**
     * Expected share of live seed lost, by cause; what stays dry in the ground is counted apart.
     *
     * @param falseStartFraction started, then dried out
     * @param washOutFraction moved or sealed in by hard rain
     * @param heatFraction killed or stopped by heat
     * @param stillDryFraction alive and waiting in dry soil at the end
     */
    public record Losses(
            double falseStartFraction,
            double washOutFraction,
            double heatFraction,
            double stillDryFraction) {}
}
