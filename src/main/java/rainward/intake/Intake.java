package rainward.intake;

import java.util.List;
import java.util.stream.Collectors;

/**
 * What came of reading a file: all of it, or nothing and every fault.
 *
 * @param <T> what the file tells
 */
public sealed interface Intake<T> {

    /**
     * All of it can be used.
     *
     * @param value what the file tells
     * @param warnings what is doubtful about it
     */
    record Accepted<T>(T value, List<InputFault> warnings) implements Intake<T> {
        public Accepted {
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * Nothing of it is used.
     *
     * @param faults all of them, in the order of the file
     */
    record Rejected<T>(List<InputFault> faults) implements Intake<T> {
        public Rejected {
            faults = List.copyOf(faults);
        }

        /** A line for each fault. */
        public String words() {
            return faults.stream().map(InputFault::words).collect(Collectors.joining("\n"));
        }
    }
}
