package rainward.input.check;

import java.time.LocalDate;
import java.util.Optional;
import rainward.farm.Require;

/**
 * When to look at a seeded field.
 *
 * @param sownOn day the seed went in
 * @param rainedOn first day since then on which rain did its part, if it did
 * @param emergence from seeding to half of the stand, as reckoned at seeding
 */
public record CheckDay(LocalDate sownOn, Optional<LocalDate> rainedOn, Emergence emergence) {

    public CheckDay {
        rainedOn.ifPresent(day -> Require.that(
                !day.isBefore(sownOn), "rain of " + day + " is before seeding on " + sownOn));
    }

    /**
     * Days from seeding to half of the stand.
     *
     * @param earlyDays one time in ten it is faster [d]
     * @param lateDays one time in ten it is slower [d]
     */
    public record Emergence(double earlyDays, double lateDays) {

        public Emergence {
            Require.inRange("earlyDays", earlyDays, 0, 120);
            Require.inRange("lateDays", lateDays, earlyDays, 240);
        }
    }

    /**
     * The day on which a stand should show: the late end of its range, and not before the early end
     * counted from the rain. Empty until rain has done its part: a look at dry seed tells nothing.
     */
    public Optional<LocalDate> due() {
        LocalDate byModel = sownOn.plusDays((long) Math.ceil(emergence.lateDays()));
        return rainedOn.map(rain -> rain.plusDays((long) Math.ceil(emergence.earlyDays())))
                .map(byRain -> byRain.isAfter(byModel) ? byRain : byModel);
    }

    public boolean isDue(LocalDate today) {
        return due().map(day -> !today.isBefore(day)).orElse(false);
    }

    /** What to say of the check. */
    public String words() {
        return due().map(day -> "look from " + day + " on")
                .orElse("waits for rain; nothing to see before");
    }
}
