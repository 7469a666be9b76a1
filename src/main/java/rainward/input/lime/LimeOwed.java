package rainward.input.lime;

import rainward.farm.Require;

/**
 * Lime that a field is still to get; it outlives the year and the brand, so it is kept as pure,
 * fine calcium carbonate.
 *
 * @param field its name
 * @param effectiveKgPerHa owed [kg/ha]
 */
public record LimeOwed(String field, double effectiveKgPerHa) {

    public LimeOwed {
        Require.named("field", field);
        Require.notNegative("effectiveKgPerHa", effectiveKgPerHa);
    }

    /** What is owed after a lime was spread. */
    public LimeOwed less(double rateKgPerHa, double effectiveFraction) {
        Require.notNegative("rateKgPerHa", rateKgPerHa);
        Require.notNegative("effectiveFraction", effectiveFraction);
        return new LimeOwed(field, Math.max(0, effectiveKgPerHa - rateKgPerHa * effectiveFraction));
    }
}
