package rainward.brief.making;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import rainward.brief.Literal;
import rainward.cycle.Outlook;
import rainward.farm.FieldCase;
import rainward.farm.StageRecord;

/** What only a person can answer. */
final class Questions {

    private final BriefInput input;

    Questions(BriefInput input) {
        this.input = input;
    }

    List<String> all() {
        List<String> all = new ArrayList<>();
        input.books().questions().forEach(q -> all.add(Literal.of(q)));
        input.outlook().fields().stream()
                .map(Outlook.FieldOutlook::item)
                .forEach(item -> item.status().stages().stream()
                        .filter(this::leftOpen)
                        .forEach(stage -> all.add(finished(item, stage))));
        return all;
    }

    /** Started on an earlier day and never reported as finished. */
    private boolean leftOpen(StageRecord stage) {
        return !stage.done() && stage.startedAt().filter(this::onAnEarlierDay).isPresent();
    }

    private boolean onAnEarlierDay(Instant started) {
        LocalDate day = started.atZone(input.zone()).toLocalDate();
        return day.isBefore(input.day());
    }

    private static String finished(FieldCase item, StageRecord stage) {
        return Literal.of(item.field().name() + ": " + stage.stage()
                + " was started on an earlier day. Is it finished?");
    }
}
