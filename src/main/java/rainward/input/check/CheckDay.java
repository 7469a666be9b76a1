package rainward.input.check;

import java.time.LocalDate;
import java.util.Optional;
import rainward.farm.Require;

/**
 * When to look at a seeded field: once a stand should show, and not before rain has done its part;
 * at once where what was sown is lost; and in any case when its season to come up is over, so that
 * no failure goes unseen.
 *
 * @param sownOn day the seed went in
 * @param seed what the weather since has made of it
 * @param emergence from sowing to the stand, under the weather since and the forecast; empty where
 *     none is to be expected
 * @param seasonEnd last day on which a stand that comes up is worth anything
 */
public record CheckDay(
        LocalDate sownOn, Seed seed, Optional<Emergence> emergence, LocalDate seasonEnd) {

    /** What the seed does. */
    public enum Seed {
        /** It waits in dry soil. */
        DRY,
        /** It is coming. */
        GROWING,
        /** No stand can come of it. */
        LOST
    }

    /** Why a day is the one. */
    public enum Reason {
        /** A stand should show by then. */
        SHOULD_SHOW,
        /** What was sown is taken for lost. */
        TAKEN_FOR_LOST,
        /** Nothing has shown, and its time is over. */
        TIME_IS_OVER
    }

    /**
     * Days from sowing to the stand.
     *
     * @param earlyDays one time in ten it is faster [d]
     * @param middleDays half of the time it is faster [d]
     * @param lateDays one time in ten it is slower [d]
     */
    public record Emergence(double earlyDays, double middleDays, double lateDays) {

        public Emergence {
            Require.inRange("earlyDays", earlyDays, 0, 400);
            Require.inRange("middleDays", middleDays, earlyDays, 400);
            Require.inRange("lateDays", lateDays, middleDays, 400);
        }
    }

    /**
     * The day to look.
     *
     * @param today what is lost is looked at today
     */
    public LocalDate due(LocalDate today) {
        return switch (seed) {
            case LOST -> today;
            case DRY -> lastDay();
            case GROWING -> lateEnd().filter(day -> day.isBefore(lastDay())).orElse(lastDay());
        };
    }

    /** Why {@link #due} is the day. */
    public Reason reason() {
        return switch (seed) {
            case LOST -> Reason.TAKEN_FOR_LOST;
            case DRY -> Reason.TIME_IS_OVER;
            case GROWING ->
                lateEnd().filter(day -> !day.isAfter(lastDay())).isPresent()
                        ? Reason.SHOULD_SHOW
                        : Reason.TIME_IS_OVER;
        };
    }

    public boolean isDue(LocalDate today) {
        return !today.isBefore(due(today));
    }

    /** Seed that went in after its season is still given until that day. */
    private LocalDate lastDay() {
        return seasonEnd.isAfter(sownOn) ? seasonEnd : sownOn;
    }

    private Optional<LocalDate> lateEnd() {
        return emergence.map(range -> sownOn.plusDays((long) Math.ceil(range.lateDays())));
    }
}
