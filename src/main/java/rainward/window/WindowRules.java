package rainward.window;

import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneId;
import rainward.farm.Require;

/**
 * When a storm window is worth a message.
 *
 * @param watch what counts as a window
 * @param change what counts as a change worth a message
 * @param manners when and how often the crew may be disturbed
 */
public record WindowRules(Watch watch, Change change, Manners manners) {

    /**
     * What counts as a window.
     *
     * @param lead how far ahead useful rain is looked for
     * @param openChance chance at which a window opens, 0 to 1
     * @param closeChance chance below which it closes again, less than {@code openChance}
     * @param hardRainMmPerH 30-minute intensity that washes out bare ground [mm/h]
     * @param neighbourKm properties this close share a window [km]
     */
    public record Watch(
            Duration lead,
            double openChance,
            double closeChance,
            double hardRainMmPerH,
            double neighbourKm) {

        public Watch {
            Require.inRange("openChance", openChance, 0, 1);
            Require.inRange("closeChance", closeChance, 0, openChance);
            Require.positive("hardRainMmPerH", hardRainMmPerH);
            Require.notNegative("neighbourKm", neighbourKm);
        }
    }

    /**
     * What counts as a change.
     *
     * @param leastShift of the middle arrival, close to it
     * @param shiftFraction of the time still to go, where that is more
     * @param stepChance change of the chance
     */
    public record Change(Duration leastShift, double shiftFraction, double stepChance) {

        public Change {
            Require.inRange("shiftFraction", shiftFraction, 0, 1);
            Require.inRange("stepChance", stepChance, 0, 1);
        }
    }

    /**
     * When the crew may be disturbed.
     *
     * @param zone of the farm's days
     * @param quietFrom start of the quiet hours, local time
     * @param quietTo end of the quiet hours, local time; may be on the next day
     * @param notice a message goes out in spite of quiet hours where a last safe start comes less
     *     than this after their end
     * @param mostADay messages on one calendar day
     */
    public record Manners(
            ZoneId zone, LocalTime quietFrom, LocalTime quietTo, Duration notice, int mostADay) {

        public Manners {
            Require.that(mostADay > 0, "mostADay is " + mostADay + ", must be 1 or more");
        }
    }

    /** Three days ahead, open at 0.5, closed below 0.35; quiet from 21:00 to 05:00; four a day. */
    public static WindowRules usual(ZoneId zone) {
        return new WindowRules(
                new Watch(Duration.ofHours(72), 0.5, 0.35, 25, 25),
                new Change(Duration.ofHours(2), 0.2, 0.2),
                new Manners(zone, LocalTime.of(21, 0), LocalTime.of(5, 0), Duration.ofHours(2), 4));
    }
}
