package rainward.window;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import rainward.window.WindowDecision.Reason;

/** Whether the crew may be disturbed now. */
final class MessageManners {

    private MessageManners() {}

    /**
     * Says what holds a message back.
     *
     * @param manners of the crew
     * @param sent when messages went out before
     * @param now the moment
     * @param firstDeadline first moment at which the message would come too late, if any
     * @return empty where it may go out
     */
    static Optional<Reason> held(
            WindowRules.Manners manners,
            List<Instant> sent,
            Instant now,
            Optional<Instant> firstDeadline) {
        ZonedDateTime local = now.atZone(manners.zone());
        LocalDate today = local.toLocalDate();
        long sentToday = sent.stream()
                .filter(at -> at.atZone(manners.zone()).toLocalDate().equals(today))
                .count();
        if (sentToday >= manners.mostADay()) {
            return Optional.of(Reason.ENOUGH_FOR_TODAY);
        }
        Optional<Instant> quietEnd =
                new QuietHours(manners.quietFrom(), manners.quietTo()).endAt(local);
        boolean canWait = quietEnd.isPresent()
                && firstDeadline
                        .map(d -> d.isAfter(quietEnd.get().plus(manners.notice())))
                        .orElse(true);
        return canWait ? Optional.of(Reason.QUIET_HOURS) : Optional.empty();
    }
}
