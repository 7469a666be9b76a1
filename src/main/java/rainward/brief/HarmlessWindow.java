package rainward.brief;

import java.util.TreeSet;
import java.util.stream.Collectors;
import rainward.window.StormWindow;

/** A storm window with names that harm no page. */
public final class HarmlessWindow {

    private HarmlessWindow() {}

    public static StormWindow of(StormWindow window) {
        return new StormWindow(
                window.id(),
                window.properties().stream()
                        .map(Literal::of)
                        .collect(Collectors.toCollection(TreeSet::new)),
                window.chance(),
                window.arrival(),
                window.amount(),
                window.hardRainChance(),
                window.fits().stream().map(HarmlessWindow::fit).toList(),
                window.leave().stream().map(Literal::of).toList());
    }

    private static StormWindow.Fit fit(StormWindow.Fit fit) {
        return new StormWindow.Fit(
                Literal.of(fit.field()), fit.plannedStart(), fit.lastSafeStart(), fit.chance());
    }
}
