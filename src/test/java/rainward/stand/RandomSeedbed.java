package rainward.stand;

import java.util.SplittableRandom;

/** Ground that wets by chance and dries again, under warm and hot days. */
public final class RandomSeedbed {

    private RandomSeedbed() {}

    public static Seedbeds of(SplittableRandom sky, int hours, int traces) {
        Seedbeds bed = new Seedbeds(hours, traces);
        double rainy = sky.nextDouble(0.002, 0.03);
        double warmth = sky.nextDouble(14, 30);
        for (int trace = 0; trace < traces; trace++) {
            double dryHours = sky.nextDouble(200);
            double dryingHours = sky.nextDouble(10, 40);
            for (int h = 0; h < hours; h++) {
                double day = Math.sin((h - 8) * Math.PI / 12);
                double rain = sky.nextDouble() < rainy ? sky.nextDouble(30) : 0;
                dryHours = rain > 3 ? 0 : dryHours + 1;
                bed.rains()[h][trace] = rain;
                bed.peaks()[h][trace] = rain * sky.nextDouble(1, 2);
                bed.potentials()[h][trace] = -0.03 * Math.exp(dryHours / dryingHours);
                bed.fronts()[h][trace] = Math.max(0, (dryHours - 3 * dryingHours) / 12);
                bed.temps()[h][trace] = warmth + 6 * day;
                bed.surfaceTemps()[h][trace] = warmth + 3 + 20 * Math.max(0, day);
            }
        }
        return bed;
    }
}
