package rainward.queue.pace;

import rainward.farm.GeoPoint;
import rainward.farm.Machine;

/** How long it takes from place to place. */
public final class Roads {

    /**
     * People on their way to a machine drive a car or a truck; common practice, no source [km/h].
     */
    public static final double CAR_KMH = 60;

    private Roads() {}

    /**
     * Minutes for a machine from place to place: hitch time and road length over its road speed,
     * rounded up; nothing within a place.
     *
     * @param machine that moves
     * @param from where it stands
     * @param to where it goes
     * @param roadFactor road length over straight distance
     * @return time on the way [min]
     */
    public static int minutes(Machine machine, GeoPoint from, GeoPoint to, double roadFactor) {
        return from.equals(to) ? 0 : minutes(machine, from.distanceKm(to) * roadFactor);
    }

    /** Minutes for a machine that hitches and drives {@code roadKm}, rounded up [min]. */
    public static int minutes(Machine machine, double roadKm) {
        double hitchMin = machine.travel().hitch().toSeconds() / 60.0;
        return (int) Math.ceil(roadKm / machine.travel().speedKmh() * 60 + hitchMin);
    }

    /** Minutes for a person by car, rounded up [min]. */
    public static int carMinutes(double roadKm) {
        return (int) Math.ceil(roadKm / CAR_KMH * 60);
    }
}
