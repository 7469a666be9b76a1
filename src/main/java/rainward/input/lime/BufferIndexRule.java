package rainward.input.lime;

import java.util.Map;
import java.util.TreeMap;
import rainward.farm.Require;

/**
 * Lime in a straight line of the lime test index, ten times the SMP buffer pH, as the Tri-State
 * recommendations give it (Extension Bulletin E-2567): {@code rate = intercept - slope x LTI}, one
 * line for each target pH. Between two targets the rates are interpolated; beyond the outer ones
 * the outer line holds.
 *
 * @param region it is published for
 * @param lines by target pH; {@code shared/lime-recommendations.csv}
 * @param standard quality and depth that the rate is meant for
 */
public record BufferIndexRule(String region, Map<Double, Line> lines, LimeNeed.Standard standard)
        implements LimeRule {

    /** Lime when pH is 0.2 to 0.3 below the goal (Tri-State 1995). */
    private static final double LEAST_GAP_PH = 0.2;

    public BufferIndexRule {
        Require.named("region", region);
        lines = Map.copyOf(lines);
        Require.that(!lines.isEmpty(), region + ": needs a line for at least one target pH");
    }

    @Override
    public String bufferMethod() {
        return "SMP";
    }

    @Override
    public LimeNeed need(double ph, double bufferPh, double targetPh) {
        double rateKgPerHa = targetPh - ph < LEAST_GAP_PH - 1e-9 ? 0 : rate(bufferPh, targetPh);
        return new LimeNeed(rateKgPerHa, standard);
    }

    private double rate(double bufferPh, double targetPh) {
        var byTarget = new TreeMap<>(lines);
        var below = byTarget.floorEntry(targetPh);
        var above = byTarget.ceilingEntry(targetPh);
        if (below == null || above == null) {
            return (below == null ? byTarget.firstEntry() : byTarget.lastEntry())
                    .getValue()
                    .rateKgPerHa(bufferPh);
        }
        double lowKgPerHa = below.getValue().rateKgPerHa(bufferPh);
        double widthPh = above.getKey() - below.getKey();
        double share = widthPh == 0 ? 0 : (targetPh - below.getKey()) / widthPh;
        return lowKgPerHa + share * (above.getValue().rateKgPerHa(bufferPh) - lowKgPerHa);
    }

    /**
     * One line.
     *
     * @param interceptKgPerHa rate at an index of zero [kg/ha]
     * @param slopeKgPerHa less for each point of the index [kg/ha]
     */
    public record Line(double interceptKgPerHa, double slopeKgPerHa) {

        public Line {
            Require.positive("interceptKgPerHa", interceptKgPerHa);
            Require.positive("slopeKgPerHa", slopeKgPerHa);
        }

        /** A line as it is printed, in short tons an acre. */
        public static Line ofShortTons(double interceptTons, double slopeTons) {
            return new Line(ShortTons.kgPerHa(interceptTons), ShortTons.kgPerHa(slopeTons));
        }

        double rateKgPerHa(double bufferPh) {
            return Math.max(0, interceptKgPerHa - slopeKgPerHa * 10 * bufferPh);
        }
    }
}
