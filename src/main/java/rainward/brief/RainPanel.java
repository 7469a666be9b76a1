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

    /** The bar with the best chance, if there is any bar; the first of several. */
    public Optional<RainPicture.Bar> likeliest() {
        return bars.stream().reduce((best, bar) -> bar.chance() > best.chance() ? bar : best);
    }
}
