package rainward.farm;

import java.util.List;

/**
 * What is sown together, and when it is worth sowing.
 *
 * @param name what the crew calls it
 * @param components kinds of seed; not empty
 * @param sowingDepthCm depth when drilled or rolled in [cm]
 * @param standTargetFraction share of live seed that must make plants for a stand, 0 to 1
 * @param season dates of sowing and worth by emergence date
 */
public record Mix(
        String name,
        List<MixComponent> components,
        double sowingDepthCm,
        double standTargetFraction,
        Season season) {

    public Mix {
        Require.named("mix name", name);
        components = List.copyOf(components);
        Require.that(!components.isEmpty(), name + ": a mix needs at least one component");
        Require.inRange("sowingDepthCm", sowingDepthCm, 0.2, 10);
        Require.inRange("standTargetFraction", standTargetFraction, 0.01, 1);
    }
}
