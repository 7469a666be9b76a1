package rainward.queue.pace;

import rainward.farm.Machine;

/** How long a machine works on a field. */
public final class WorkTime {

    private static final double SQUARE_METRES_PER_HA = 10_000;

    private WorkTime() {}

    /**
     * Time for a field: area over effective field capacity (ASABE EP496), a turn for each pass, and
     * stops to refill. The field is taken for a square, crossed side by side; so a small one turns
     * more for its area. A box that is not empty is used up on the next field, so stops are counted
     * in proportion.
     *
     * @param machine with its pace
     * @param areaHa area of the field [ha]
     * @return working time, travel not counted in [h]
     */
    public static double hours(Machine machine, double areaHa) {
        Machine.WorkPace pace = machine.work();
        double sideM = Math.sqrt(areaHa * SQUARE_METRES_PER_HA);
        double passes = Math.ceil(sideM / pace.widthM() - 1e-9);
        double turningH = passes * pace.turnMinutes() / 60;
        double refillingH = machine.refill()
                .map(r -> areaHa / r.areaHa() * r.stop().toSeconds() / 3600.0)
                .orElse(0.0);
        return areaHa / pace.workRateHaPerH() + turningH + refillingH;
    }

    /** The same in full minutes, rounded up, at least one [min]. */
    public static int minutes(Machine machine, double areaHa) {
        return (int) Math.max(1, Math.ceil(hours(machine, areaHa) * 60 - 1e-6));
    }
}
