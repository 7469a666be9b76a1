package rainward.soil;

import java.time.Instant;
import rainward.farm.Require;
import rainward.soil.property.Layers;
import rainward.soil.property.SaxtonRawls;

/**
 * What a column holds at an instant; stored between runs.
 *
 * @param at full hour, UTC
 * @param waterFraction of each water layer from the top [m3/m3]
 * @param tempC of each heat layer from the top [C]
 * @param surface rain that is still above the soil or just in it
 */
public record SoilState(Instant at, double[] waterFraction, double[] tempC, Wetting surface) {

    public SoilState {
        for (int l = 0; l < waterFraction.length; l++) {
            Require.inRange("waterFraction[" + l + "]", waterFraction[l], 0, 1);
        }
        for (int l = 0; l < tempC.length; l++) {
            Require.inRange("tempC[" + l + "]", tempC[l], -60, 90);
        }
    }

    /**
     * Rain on its way in.
     *
     * @param leafMm on leaves [mm]
     * @param pondMm in hollows [mm]
     * @param goneInMm infiltrated by the storm under way, fading once it ends [mm]
     */
    public record Wetting(double leafMm, double pondMm, double goneInMm) {

        /** A dry surface. */
        public static final Wetting NONE = new Wetting(0, 0, 0);

        public Wetting {
            Require.notNegative("leafMm", leafMm);
            Require.notNegative("pondMm", pondMm);
            Require.notNegative("goneInMm", goneInMm);
        }
    }

    /** What somebody who dug with a boot heel says of the soil at seed depth. */
    public enum Word {
        /** Crumbles, no colour change when wetted by hand is needed to see it: at wilting point. */
        DRY,
        /** Holds a ball: three quarters of the way from wilting point to field capacity. */
        MOIST,
        /** Glistens or sticks: a quarter of the way from field capacity to saturation. */
        WET
    }

    /**
     * The state after somebody looked: the top 5 cm take the water of the word, the next 5 cm go
     * half the way, what lies below stays.
     */
    public SoilState corrected(Word word, FieldSoil soil) {
        Layers layers = soil.layers();
        double told = waterFractionOf(word, layers.matrix);
        double[] water = waterFraction.clone();
        for (int l = 0; l < water.length && layers.bottomCm(l) <= 10; l++) {
            double trust = layers.bottomCm(l) <= 5 ? 1 : 0.5;
            water[l] += trust * (told - water[l]);
        }
        return new SoilState(at, water, tempC, surface);
    }

    private static double waterFractionOf(Word word, SaxtonRawls matrix) {
        double dry = matrix.wiltingPointFraction();
        double capacity = matrix.fieldCapacityFraction();
        return switch (word) {
            case DRY -> dry;
            case MOIST -> dry + 0.75 * (capacity - dry);
            case WET -> capacity + 0.25 * (matrix.saturationFraction() - capacity);
        };
    }

    /** The state after the top is turned over to a depth: its water and heat are mixed. */
    public SoilState mixed(FieldSoil soil, double depthCm) {
        Layers layers = soil.layers();
        double[] water = waterFraction.clone();
        double[] temp = tempC.clone();
        layers.mix(water, depthCm);
        layers.mix(temp, depthCm);
        return new SoilState(at, water, temp, surface);
    }

    /** The state told at another hour. */
    public SoilState at(Instant hour) {
        return new SoilState(hour, waterFraction, tempC, surface);
    }
}
