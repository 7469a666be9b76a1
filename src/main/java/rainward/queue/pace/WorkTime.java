package rainward.queue.pace;

import java.time.Duration;
import java.util.Optional;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.queue.problem.Filling;
import rainward.queue.problem.Job;

/** How long a machine works on a field. */
public final class WorkTime {

    private static final double SQUARE_METRES_PER_HA = 10_000;

    private WorkTime() {}

    /**
     * Time for a field: area over effective field capacity (ASABE EP496), a turn for each swath,
     * and stops to refill. The field is taken for a square, crossed side by side; so a small one
     * turns more for its area. Where nothing tells how the field empties the machine, it is filled
     * after the ground that its settings give, in proportion: what is left goes on the next field.
     *
     * @param machine with its pace
     * @param areaHa area of the field [ha]
     * @param known how the field empties the machine, if that is known
     * @return working time, travel between fields not counted in [h]
     */
    public static double hours(Machine machine, double areaHa, Optional<Filling> known) {
        Machine.WorkPace pace = machine.work();
        double sideM = Math.sqrt(areaHa * SQUARE_METRES_PER_HA);
        double swaths = Math.ceil(sideM / pace.widthM() - 1e-9);
        double turningH = swaths * pace.turnMinutes() / 60;
        double onceH = areaHa / pace.workRateHaPerH() + turningH;
        double byAreaH = machine.refill()
                .map(r -> areaHa / r.areaHa() * r.stop().toSeconds() / 3600.0)
                .orElse(0.0);
        return known.map(f -> f.passes() * onceH + stopping(machine, f).toSeconds() / 3600.0)
                .orElse(onceH + byAreaH);
    }

    /** How long it is filled for a field, on the way to that and back. */
    public static Duration stopping(Machine machine, Filling filling) {
        Duration stop =
                machine.refill().map(Machine.Refill::stop).orElse(Machine.Refill.USUAL_STOP);
        return filling.road().plusSeconds(Math.round(filling.fillCount() * stop.toSeconds()));
    }

    /** Time for a stage of a field in full minutes, rounded up, at least one [min]. */
    public static int minutes(Machine machine, Job job, Operation operation) {
        return minutes(
                machine, job.field().field().areaHa(), job.fillings().of(machine, operation));
    }

    /** The same for a field of which only the area is known [min]. */
    public static int minutes(Machine machine, double areaHa, Optional<Filling> known) {
        return (int) Math.max(1, Math.ceil(hours(machine, areaHa, known) * 60 - 1e-6));
    }
}
