package rainward.soil;

import java.util.List;
import rainward.farm.SoilTexture;

/** Soils for tests, each with the reason it is there. */
public final class Soils {

    /** Drains at once; the steepest drainage curve a step meets. */
    public static final SoilTexture SAND = new SoilTexture(0.88, 0.05, 2.5);

    /** The middle of the texture triangle. */
    public static final SoilTexture LOAM = new SoilTexture(0.40, 0.20, 2.5);

    /** Common in southern Michigan. */
    public static final SoilTexture SANDY_LOAM = new SoilTexture(0.65, 0.10, 2.5);

    /** Greatest suction over thin layers. */
    public static final SoilTexture SILT = new SoilTexture(0.10, 0.05, 2.5);

    /** Hardly drains; wets from the top alone. */
    public static final SoilTexture CLAY = new SoilTexture(0.25, 0.50, 2.5);

    public static final List<SoilTexture> ALL = List.of(SAND, LOAM, SANDY_LOAM, SILT, CLAY);

    public static FieldSoil bare(SoilTexture texture) {
        return new FieldSoil(texture, 0.02, SurfaceCondition.BARE);
    }

    public static FieldSoil grass(SoilTexture texture) {
        return new FieldSoil(texture, 0.02, SurfaceCondition.SHORT_GRASS);
    }

    private Soils() {}
}
