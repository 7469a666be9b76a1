package rainward.farm;

/**
 * One kind of seed in a mix, pure live seed.
 *
 * @param species what it is
 * @param drilledKgPerHa rate when drilled or rolled in [kg/ha]
 * @param broadcastKgPerHa rate when thrown on the surface [kg/ha]
 */
public record MixComponent(Species species, double drilledKgPerHa, double broadcastKgPerHa) {

    public MixComponent {
        Require.positive("drilledKgPerHa", drilledKgPerHa);
        Require.positive("broadcastKgPerHa", broadcastKgPerHa);
    }

    /** Rate for the method in hand [kg/ha]. */
    public double rateKgPerHa(SeedingMethod method) {
        return method == SeedingMethod.BROADCAST ? broadcastKgPerHa : drilledKgPerHa;
    }
}
