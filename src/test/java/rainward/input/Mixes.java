package rainward.input;

import java.time.MonthDay;
import java.util.List;
import rainward.farm.Mix;
import rainward.farm.MixComponent;
import rainward.farm.Season;
import rainward.farm.Species;

/** Mixes of our own for tests of what a field takes. */
public final class Mixes {
    private static final Season ALWAYS = new Season(
            MonthDay.of(1, 1),
            MonthDay.of(12, 30),
            MonthDay.of(12, 30),
            MonthDay.of(12, 31),
            1,
            0.5);

    private Mixes() {}

    /** A species of which only name and seed count matter here. */
    public static Species species(String name, double seedsPerKg) {
        return new Species(
                name,
                new Species.Cardinal(2, 27, 40, 55),
                14,
                -0.95,
                0.12,
                0.96,
                new Species.SeedlingGrowth(25, 8, 4),
                seedsPerKg);
    }

    public static MixComponent part(String species, double seedsPerKg, double kgPerHa) {
        return new MixComponent(species(species, seedsPerKg), kgPerHa, kgPerHa * 1.5);
    }

    public static Mix mix(String name, MixComponent... parts) {
        return new Mix(name, List.of(parts), 1.3, 0.4, ALWAYS);
    }
}
