package rainward.queue.pace;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rainward.farm.Require;

/**
 * A field that waits for its seed, and whether to give it up so that the others finish.
 *
 * @param field its name
 * @param areaHa of it [ha]
 * @param worth that is expected of it, 0 to 1
 * @param deadline last day on which its mix goes in
 * @param hasOtherWay true where something else can be sown there later
 */
public record GiveUp(
        String field, double areaHa, double worth, LocalDate deadline, boolean hasOtherWay) {

    public GiveUp {
        Require.notNegative("areaHa", areaHa);
    }

    /** Chance to be done with so much ground by a day. */
    @FunctionalInterface
    public interface Finish {
        double chance(LocalDate deadline, double leftHa);
    }

    /**
     * Deadline by deadline: of the ground that must be done by it, from the least worth upwards,
     * until what stays is likely to finish.
     *
     * @param safeChance from which it is
     * @return those to give up, in this order; empty where nothing need be
     */
    public static List<GiveUp> of(List<GiveUp> waiting, Finish finish, double safeChance) {
        List<GiveUp> staying = new ArrayList<>(waiting);
        staying.sort(Comparator.comparingDouble(GiveUp::worth).thenComparing(GiveUp::field));
        List<GiveUp> given = new ArrayList<>();
        List<LocalDate> deadlines =
                staying.stream().map(GiveUp::deadline).distinct().sorted().toList();
        for (LocalDate deadline : deadlines) {
            List<GiveUp> due = new ArrayList<>(staying.stream()
                    .filter(one -> !one.deadline().isAfter(deadline))
                    .toList());
            for (GiveUp one : List.copyOf(due)) {
                double leftHa = due.stream().mapToDouble(GiveUp::areaHa).sum();
                if (one.hasOtherWay() && finish.chance(deadline, leftHa) < safeChance) {
                    due.remove(one);
                    staying.remove(one);
                    given.add(one);
                }
            }
        }
        return given;
    }
}
