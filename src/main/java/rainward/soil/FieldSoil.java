package rainward.soil;

import rainward.farm.Field;
import rainward.farm.Require;
import rainward.farm.SoilTexture;
import rainward.soil.property.Layers;

/**
 * What a soil column is built from.
 *
 * @param texture of the whole column
 * @param slopeFraction rise over run, 0 to 0.6
 * @param surface what work and plants have made of the top
 */
public record FieldSoil(SoilTexture texture, double slopeFraction, SurfaceCondition surface) {

    public FieldSoil {
        Require.inRange("slopeFraction", slopeFraction, 0, 0.6);
    }

    /** The soil of a field in the condition it is in now. */
    public static FieldSoil of(Field.Ground ground, SurfaceCondition surface) {
        return new FieldSoil(ground.texture(), ground.slopeFraction(), surface);
    }

    /** What its layers hold and pass. */
    public Layers layers() {
        return new Layers(texture, surface.tilth().densityFactor());
    }
}
