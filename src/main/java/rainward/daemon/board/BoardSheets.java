package rainward.daemon.board;

import java.util.List;
import rainward.board.house.Sheet;
import rainward.board.house.Standing;
import rainward.cycle.sheet.OrderSheet;
import rainward.cycle.sheet.ReadySheet;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;

/** Results that the commands print with {@code --json}, taken from the last round. */
final class BoardSheets {

    private final Office office;
    private final Standings standings;

    BoardSheets(Office office, Standings standings) {
        this.office = office;
        this.standings = standings;
    }

    List<Sheet> all() {
        return List.of(
                new Sheet(
                        "order",
                        "Which field next, by whom, with what, when.",
                        OrderSheet.class,
                        () -> OrderSheet.of(round().outlook(), office.zone())),
                new Sheet(
                        "ready",
                        "How ready each waiting field is, and why.",
                        ReadySheet[].class,
                        () -> ReadySheet.of(round().outlook(), office.zone())));
    }

    private Standing.Round round() {
        return standings
                .now()
                .round()
                .orElseThrow(() -> Refusal.badWorld("The first order is being worked out."));
    }
}
