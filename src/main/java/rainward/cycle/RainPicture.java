package rainward.cycle;

import java.util.List;
import rainward.farm.Window;
import rainward.weather.trace.TraceBasis;

/**
 * Rain ahead at one property, in steps of six hours.
 *
 * @param bars in order of time
 * @param basis what it was drawn from
 */
public record RainPicture(List<Bar> bars, TraceBasis basis) {

    public RainPicture {
        bars = List.copyOf(bars);
    }

    /**
     * One step.
     *
     * @param window six hours
     * @param chance of measurable rain, 0 to 1
     * @param meanMm over all traces [mm]
     * @param p90Mm one trace in ten is wetter [mm]
     * @param hardRainChance of a burst that washes out bare ground, 0 to 1
     */
    public record Bar(
            Window window, double chance, double meanMm, double p90Mm, double hardRainChance) {}
}
