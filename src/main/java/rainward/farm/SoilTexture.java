package rainward.farm;

/**
 * What a soil is made of, as the pedotransfer functions ask for it.
 *
 * @param sandFraction share of sand in the mineral part by weight, 0 to 1
 * @param clayFraction share of clay, 0 to 1; sand and clay together at most 1
 * @param organicMatterPct organic matter, 0 to 8, the range of Saxton and Rawls 2006 [weight %]
 */
public record SoilTexture(double sandFraction, double clayFraction, double organicMatterPct) {

    public SoilTexture {
        Require.inRange("sandFraction", sandFraction, 0, 1);
        Require.inRange("clayFraction", clayFraction, 0, 1);
        Require.inRange("organicMatterPct", organicMatterPct, 0, 8);
        Require.that(
                sandFraction + clayFraction <= 1 + 1e-9,
                "sand and clay together are " + (sandFraction + clayFraction) + ", at most 1");
    }
}
