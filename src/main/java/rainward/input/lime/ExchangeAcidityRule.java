package rainward.input.lime;

import rainward.farm.Require;

/**
 * Lime from exchangeable acidity, as North Carolina publishes it (ncagr.gov): {@code Ac = 4 (6.6 -
 * buffer pH)}, {@code lime = Ac (target - pH) / (6.6 - pH)} in short tons an acre.
 *
 * @param region it is published for
 * @param standard quality and depth that the rate is meant for
 */
public record ExchangeAcidityRule(String region, LimeNeed.Standard standard) implements LimeRule {
    private static final double BUFFER_PH = 6.6;
    private static final double ACIDITY_CMOL_PER_L_PER_PH = 4;
    // The rule: less than 0.3 short tons an acre is not worth a trip.
    private static final double LEAST_TONS = 0.3;

    public ExchangeAcidityRule {
        Require.named("region", region);
    }

    @Override
    public String bufferMethod() {
        return "Mehlich";
    }

    /** Exchangeable acidity [cmol/L, the same number as meq/100 cm3], zero and more. */
    public static double acidityCmolPerL(double bufferPh) {
        return Math.max(0, ACIDITY_CMOL_PER_L_PER_PH * (BUFFER_PH - bufferPh));
    }

    @Override
    public LimeNeed need(double ph, double bufferPh, double targetPh) {
        // The buffer stands at pH 6.6: beyond it the rule has nothing to say.
        double reachablePh = Math.min(targetPh, BUFFER_PH);
        double tons = ph >= reachablePh
                ? 0
                : acidityCmolPerL(bufferPh) * (reachablePh - ph) / (BUFFER_PH - ph);
        return new LimeNeed(tons < LEAST_TONS ? 0 : ShortTons.kgPerHa(tons), standard);
    }

    /**
     * What lime spread not long ago still has to do: it falls in a straight line by 8 % a month on
     * mineral soil, 16 % on organic soil.
     *
     * @param spreadKgPerHa rate that was spread [kg/ha]
     * @param months since then, 0 and more
     */
    public static double creditKgPerHa(double spreadKgPerHa, int months, boolean organicSoil) {
        Require.notNegative("spreadKgPerHa", spreadKgPerHa);
        Require.notNegative("months", months);
        return spreadKgPerHa * Math.max(0, 1 - months * (organicSoil ? 0.16 : 0.08));
    }
}
