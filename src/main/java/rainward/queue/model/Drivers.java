package rainward.queue.model;

import java.util.Arrays;
import java.util.Optional;
import rainward.farm.Crew;

/**
 * Who is considered for which machine. Where every machine can have a driver of its own who is
 * never away, nobody need ever change machines, and only these pairs are searched; nothing is lost
 * by it.
 */
final class Drivers {

    private final Crew crew;
    private final Optional<int[]> own;

    private Drivers(Crew crew, Optional<int[]> own) {
        this.crew = crew;
        this.own = own;
    }

    static Drivers of(Crew crew) {
        boolean away = crew.people().stream().anyMatch(p -> !p.absences().isEmpty());
        return new Drivers(crew, away ? Optional.empty() : match(crew));
    }

    boolean may(int machine, int person) {
        return own.map(o -> o[machine] == person).orElseGet(() -> canRun(crew, machine, person));
    }

    private static boolean canRun(Crew crew, int machine, int person) {
        return crew.people().get(person).canRun(crew.machines().get(machine).name());
    }

    /** A person for each machine, by augmenting paths; empty where there are too few. */
    private static Optional<int[]> match(Crew crew) {
        int[] machineOf = new int[crew.people().size()];
        Arrays.fill(machineOf, -1);
        for (int m = 0; m < crew.machines().size(); m++) {
            if (!place(crew, m, machineOf, new boolean[machineOf.length])) {
                return Optional.empty();
            }
        }
        int[] own = new int[crew.machines().size()];
        for (int p = 0; p < machineOf.length; p++) {
            if (machineOf[p] >= 0) {
                own[machineOf[p]] = p;
            }
        }
        return Optional.of(own);
    }

    private static boolean place(Crew crew, int machine, int[] machineOf, boolean[] seen) {
        for (int p = 0; p < machineOf.length; p++) {
            if (canRun(crew, machine, p) && !seen[p]) {
                seen[p] = true;
                if (machineOf[p] < 0 || place(crew, machineOf[p], machineOf, seen)) {
                    machineOf[p] = machine;
                    return true;
                }
            }
        }
        return false;
    }
}
