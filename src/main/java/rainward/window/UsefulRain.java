package rainward.window;

import java.util.Optional;
import rainward.farm.Mix;
import rainward.farm.SoilTexture;
import rainward.soil.property.SaxtonRawls;
import rainward.weather.rain.RainAmount;
import rainward.weather.trace.Traces;

/** Rain that brings seed up: enough of it in one spell. */
final class UsefulRain {

    /** Dry hours that end a spell; our choice, no source. */
    private static final int DRY_HOURS_BETWEEN = 6;

    /** Soil below the seed that must be wet for the first root; our choice, no source [cm]. */
    private static final double BELOW_SEED_CM = 3;

    private static final double MM_PER_CM = 10;

    private UsefulRain() {}

    /**
     * Rain that fills the seed's zone from wilting point to field capacity: available water of the
     * texture (Saxton and Rawls 2006) x (sowing depth + 3 cm).
     *
     * @param texture of the field
     * @param mix to be sown
     * @return least useful rain of a spell [mm]
     */
    static double thresholdMm(SoilTexture texture, Mix mix) {
        SaxtonRawls soil = SaxtonRawls.of(texture);
        double available = soil.fieldCapacityFraction() - soil.wiltingPointFraction();
        return available * (mix.sowingDepthCm() + BELOW_SEED_CM) * MM_PER_CM;
    }

    /**
     * A wet spell on one trace.
     *
     * @param hour of the traces in which it begins
     * @param rainMm total
     * @param peakMmPerH greatest 30-minute intensity
     */
    record Spell(int hour, double rainMm, double peakMmPerH) {}

    /** First spell that begins in {@code [from, end)} and brings at least {@code leastMm}. */
    static Optional<Spell> first(Traces traces, int trace, Range range, double leastMm) {
        int h = Math.max(0, range.from());
        while (h < Math.min(range.end(), traces.hours())) {
            if (traces.rainMm()[h][trace] < RainAmount.MEASURABLE_MM) {
                h++;
                continue;
            }
            int start = h;
            double mm = 0;
            double peak = 0;
            int dry = 0;
            while (h < traces.hours() && dry < DRY_HOURS_BETWEEN) {
                double hourMm = traces.rainMm()[h][trace];
                mm += hourMm;
                peak = Math.max(peak, traces.peak30MmPerH()[h][trace]);
                dry = hourMm < RainAmount.MEASURABLE_MM ? dry + 1 : 0;
                h++;
            }
            if (mm >= leastMm) {
                return Optional.of(new Spell(start, mm, peak));
            }
        }
        return Optional.empty();
    }

    /** Hours {@code [from, end)} of the traces. */
    record Range(int from, int end) {}
}
