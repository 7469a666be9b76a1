package rainward.brief;

import java.util.List;
import java.util.Optional;
import rainward.cycle.RainPicture;
import rainward.farm.Operation;
import rainward.farm.Window;

/**
 * Rain ahead at a property with the work there laid over it.
 *
 * @param property its name
 * @param bars six hours each, in order of time
 * @param work planned there
 */
public record RainPanel(String property, List<RainPicture.Bar> bars, List<Work> work) {

    public RainPanel {
        bars = List.copyOf(bars);
        work = List.copyOf(work);
    }

    /** Work of one machine. */
    public record Work(Window window, Operation operation) {}

    /** Rain less likely than that is called dry: common practice, no source. */
    private static final double DRY_BELOW = 0.15;

    /** True where rain is unlikely as far as the forecast goes, or there is none. */
    public boolean isDry() {
        return likeliest().map(bar -> bar.chance() < DRY_BELOW).orElse(true);
    }

    /** True where a picture shows more than a line of text: rain, or work under a clear sky. */
    public boolean isWorthAPicture() {
        return !bars.isEmpty() && !(isDry() && work.isEmpty());
    }

    /** The bar with the best chance, if there is any bar; the first of several. */
    public Optional<RainPicture.Bar> likeliest() {
        return bars.stream().reduce((best, bar) -> bar.chance() > best.chance() ? bar : best);
    }
}
