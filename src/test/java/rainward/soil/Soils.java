package rainward.soil;

import java.util.List;
import rainward.farm.SoilTexture;

/** Soils for tests, each with the reason it is there. */
final class Soils {

    /** Drains at once; the steepest drainage curve a step meets. */
    static final SoilTexture SAND = new SoilTexture(0.88, 0.05, 2.5);

    /** The middle of the texture triangle. */
    static final SoilTexture LOAM = new SoilTexture(0.40, 0.20, 2.5);

    /** Common in southern Michigan. */
    static final SoilTexture SANDY_LOAM = new SoilTexture(0.65, 0.10, 2.5);

    /** Greatest suction over thin layers. */
    static final SoilTexture SILT = new SoilTexture(0.10, 0.05, 2.5);

    /** Hardly drains; wets from the top alone. */
    static final SoilTexture CLAY = new SoilTexture(0.25, 0.50, 2.5);

    static final List<SoilTexture> ALL = List.of(SAND, LOAM, SANDY_LOAM, SILT, CLAY);

    static FieldSoil bare(SoilTexture texture) {
        return new FieldSoil(texture, 0.02, SurfaceCondition.BARE);
    }

    static FieldSoil grass(SoilTexture texture) {
        return new FieldSoil(texture, 0.02, SurfaceCondition.SHORT_GRASS);
    }

    private Soils() {}
}
