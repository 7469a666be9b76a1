package rainward.brief.calendar;

import java.time.Instant;
import java.util.Optional;
import rainward.brief.Orders.Place;
import rainward.brief.Orders.StageLine;

/**
 * One stage of one field on one machine, as calendars know it.
 *
 * @param uid stays with it from order to order
 * @param version of what is said about it
 * @param place which field
 * @param stage what is done, by whom, when
 * @param mix that is sown, where it is a seeding
 */
public record WorkEvent(
        String uid, Version version, Place place, StageLine stage, Optional<String> mix) {

    /**
     * Which word on an event is the newest.
     *
     * @param sequence grows with each change (RFC 5545 3.8.7.4)
     * @param changedAt when it was changed last
     * @param cancelled true where the work fell out of the order
     */
    public record Version(int sequence, Instant changedAt, boolean cancelled) {}

    /** True where a calendar shows the same hours, hands and task. */
    boolean saysTheSameAs(WorkEvent other) {
        return version.cancelled() == other.version.cancelled()
                && place.equals(other.place)
                && stage.work().equals(other.stage.work())
                && stage.hands().equals(other.stage.hands())
                && mix.equals(other.mix);
    }

    WorkEvent withVersion(Version newer) {
        return new WorkEvent(uid, newer, place, stage, mix);
    }
}
