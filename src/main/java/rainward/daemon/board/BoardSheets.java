package rainward.daemon.board;

import java.util.List;
import java.util.Optional;
import rainward.board.house.Sheet;
import rainward.board.house.Standing;
import rainward.cycle.Outlook;
import rainward.cycle.sheet.OrderSheet;
import rainward.cycle.sheet.ReadySheet;
import rainward.cycle.sheet.WindowSheet;
import rainward.daemon.office.Office;
import rainward.daemon.office.OutboxSheet;

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
                        () -> outlook().map(o -> OrderSheet.of(o, office.zone()))),
                new Sheet(
                        "ready",
                        "How ready each waiting field is, and why.",
                        ReadySheet[].class,
                        () -> outlook().map(o -> ReadySheet.of(o, office.zone()))),
                new Sheet(
                        "windows",
                        "Storm windows that are open: time left to seed ahead of useful rain.",
                        WindowSheet[].class,
                        () -> outlook().map(o -> WindowSheet.of(o.windows(), office.zone()))),
                new Sheet(
                        "outbox",
                        "Mail that waits and that of the last week, with what became of it.",
                        OutboxSheet[].class,
                        () -> Optional.of(OutboxSheet.of(office))));
    }

    private Optional<Outlook> outlook() {
        return standings.now().round().map(Standing.Round::outlook);
    }
}
