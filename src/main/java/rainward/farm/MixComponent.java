package rainward.farm;

/**
 * One kind of seed in a mix, pure live seed.
 *
 * @param species what it is
 * @param drilledKgPerHa rate when drilled or rolled in [kg/ha]
 * @param broadcastKgPerHa rate when thrown on the surface [kg/ha]
 * @param standWeight what a full stand of it counts for among the components of its mix
 */
public record MixComponent(
        Species species, double drilledKgPerHa, double broadcastKgPerHa, double standWeight) {

    public MixComponent {
        Require.positive("drilledKgPerHa", drilledKgPerHa);
        Require.positive("broadcastKgPerHa", broadcastKgPerHa);
        Require.positive("standWeight", standWeight);
    }

    /** A component that counts as much as any other. */
    public MixComponent(Species species, double drilledKgPerHa, double broadcastKgPerHa) {
        this(species, drilledKgPerHa, broadcastKgPerHa, 1);
    }

    /** Rate for the method in hand [kg/ha]. */
    public double rateKgPerHa(SeedingMethod method) {
        return method == SeedingMethod.BROADCAST ? broadcastKgPerHa : drilledKgPerHa;
    }
}
