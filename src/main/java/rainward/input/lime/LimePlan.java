package rainward.input.lime;

import java.util.ArrayList;
import java.util.List;
import rainward.farm.Require;

/**
 * Lime in doses: this year at most the cap, the rest in later years.
 *
 * @param field its name
 * @param effectiveFraction of the lime that is spread
 * @param doses in order of years; empty where none is owed
 */
public record LimePlan(String field, double effectiveFraction, List<Dose> doses) {
    // Lighter than this is rounding [kg/ha].
    private static final double NOTHING_KG_PER_HA = 1e-6;

    public LimePlan {
        doses = List.copyOf(doses);
    }

    /**
     * Splits what is owed.
     *
     * @param effectiveFraction of the lime at hand, as {@link LimeQuality#effectiveFraction}
     * @param year of the first dose
     */
    public static LimePlan of(LimeOwed owed, double effectiveFraction, Cap cap, int year) {
        Require.positive("effectiveFraction", effectiveFraction);
        List<Dose> doses = new ArrayList<>();
        double leftKgPerHa = owed.effectiveKgPerHa() / effectiveFraction;
        for (int when = year; leftKgPerHa > NOTHING_KG_PER_HA; when += cap.yearsBetween()) {
            double rateKgPerHa = Math.min(leftKgPerHa, cap.mostKgPerHa());
            doses.add(new Dose(when, rateKgPerHa));
            leftKgPerHa -= rateKgPerHa;
        }
        return new LimePlan(owed.field(), effectiveFraction, doses);
    }

    /** Dose of the first year [kg/ha]; zero where none is owed. */
    public double firstKgPerHa() {
        return doses.isEmpty() ? 0 : doses.get(0).rateKgPerHa();
    }

    /** What stays owed once the first dose is spread. */
    public LimeOwed owedAfterFirst() {
        double laterKgPerHa =
                doses.stream().skip(1).mapToDouble(Dose::rateKgPerHa).sum();
        return new LimeOwed(field, laterKgPerHa * effectiveFraction);
    }

    /** Share of all that is owed which the first dose brings, 0 to 1. */
    public double firstShare() {
        double allKgPerHa = doses.stream().mapToDouble(Dose::rateKgPerHa).sum();
        return doses.isEmpty() ? 0 : firstKgPerHa() / allKgPerHa;
    }

    /**
     * One dose.
     *
     * @param year it is spread in
     * @param rateKgPerHa of the lime at hand [kg/ha]
     */
    public record Dose(int year, double rateKgPerHa) {}

    /**
     * The most that goes on at a time.
     *
     * @param mostKgPerHa of lime as spread [kg/ha]
     * @param yearsBetween doses, 1 to 10
     */
    public record Cap(double mostKgPerHa, int yearsBetween) {

        /**
         * Two short tons an acre; more than that at a time is for lime that is worked in (MU
         * Extension, which waits two to three years for the rest where it is not).
         */
        public static final Cap USUAL = new Cap(ShortTons.kgPerHa(2), 1);

        public Cap {
            // A smaller cap would owe lime to great-grandchildren.
            Require.inRange("mostKgPerHa", mostKgPerHa, 50, 50_000);
            Require.inRange("yearsBetween", yearsBetween, 1, 10);
        }
    }
}
