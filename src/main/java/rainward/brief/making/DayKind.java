package rainward.brief.making;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import rainward.brief.Brief.Kind;
import rainward.brief.Orders;
import rainward.cycle.Outlook;
import rainward.readiness.Readiness;
import rainward.readiness.Readiness.Gate;

/** What kind of day it is: the sentence that the brief opens with depends on it. */
final class DayKind {

    private static final Set<Gate.Kind> NO_FORECAST =
            EnumSet.of(Gate.Kind.NO_FORECAST, Gate.Kind.FORECAST_TOO_OLD);

    private DayKind() {}

    static Kind of(Outlook outlook, Orders orders) {
        if (!orders.today().isEmpty()) {
            return Kind.WORK;
        }
        List<Readiness> waiting = outlook.fields().stream()
                .filter(f -> f.item().status().waiting())
                .map(Outlook.FieldOutlook::readiness)
                .toList();
        if (waiting.isEmpty()) {
            return Kind.NOTHING_PENDING;
        }
        return idle(outlook, orders, waiting);
    }

    private static Kind idle(Outlook outlook, Orders orders, List<Readiness> waiting) {
        if (allStopped(waiting, EnumSet.of(Gate.Kind.OUT_OF_SEASON))) {
            return Kind.SEASON_OVER;
        }
        if (outlook.forecasts().isEmpty() || allStopped(waiting, NO_FORECAST)) {
            return Kind.NO_FORECAST;
        }
        if (allStopped(waiting, EnumSet.of(Gate.Kind.NOT_WORKABLE))) {
            return Kind.TOO_WET;
        }
        return orders.later().isEmpty() ? Kind.NOTHING_FITS : Kind.WORK_LATER;
    }

    private static boolean allStopped(List<Readiness> waiting, Set<Gate.Kind> kinds) {
        return waiting.stream()
                .allMatch(r -> r.gates().stream().anyMatch(gate -> kinds.contains(gate.kind())));
    }
}
