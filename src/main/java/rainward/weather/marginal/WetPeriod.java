package rainward.weather.marginal;

import java.util.List;
import rainward.farm.Require;
import rainward.farm.Window;

/**
 * A stretch of time with one chance of rain and what is expected to fall in each part of it.
 *
 * @param window the stretch, whole hours
 * @param probability chance of at least 0.254 mm in it, 0 to 1; zero means dry
 * @param parts cover the window in order; a storm lies in one of them
 */
public record WetPeriod(Window window, double probability, List<Part> parts) {

    public WetPeriod {
        Require.inRange("probability", probability, 0, 1);
        parts = List.copyOf(parts);
        Require.that(!parts.isEmpty(), "a wet period needs a part");
    }

    /** Expected rain, dry outcomes counted in [mm]. */
    public double meanMm() {
        double sum = 0;
        for (Part part : parts) {
            sum += part.meanMm;
        }
        return sum;
    }

    /** Expected rain given that it is wet; nought where it is never wet [mm]. */
    public double meanWetMm() {
        return probability > 0 ? meanMm() / probability : 0;
    }

    /** The same amount where it is wet, with another chance of that; a chance of zero stays. */
    WetPeriod withChance(double other) {
        if (probability == 0 || other == probability) {
            return this;
        }
        double scale = other / probability;
        return new WetPeriod(
                window,
                other,
                parts.stream()
                        .map(p -> new Part(p.window, p.meanMm * scale, p.fromClimate))
                        .toList());
    }

    /** Share of the mean that comes from climate, 0 to 1. */
    public double climateShare() {
        double usual = parts.stream()
                .filter(Part::fromClimate)
                .mapToDouble(Part::meanMm)
                .sum();
        return usual > 0 ? usual / meanMm() : 0;
    }

    /**
     * A part of a period that one interval of amounts covers.
     *
     * @param window the part, whole hours
     * @param meanMm expected rain, dry outcomes counted in [mm]
     * @param fromClimate true where no amount was forecast and the month's usual one stands in
     */
    public record Part(Window window, double meanMm, boolean fromClimate) {

        public Part {
            Require.notNegative("meanMm", meanMm);
        }
    }
}
