package rainward.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Collects what is wrong with one file, so that all of it is told at once. */
final class Faults {

    private final String file;
    private final List<InputFault> faults = new ArrayList<>();
    private final List<InputFault> warnings = new ArrayList<>();

    Faults(String file) {
        this.file = file;
    }

    void add(String place, String found, String remedy) {
        faults.add(new InputFault(file, place, found, remedy));
    }

    void warn(String place, String found, String remedy) {
        warnings.add(new InputFault(file, place, found, remedy));
    }

    int count() {
        return faults.size();
    }

    /** All or nothing; the value is asked for only where there is no fault. */
    <T> Intake<T> outcome(Supplier<T> value) {
        return faults.isEmpty()
                ? new Intake.Accepted<>(value.get(), warnings)
                : new Intake.Rejected<>(faults);
    }

    static <T> Intake<T> single(String file, String place, String found, String remedy) {
        Faults faults = new Faults(file);
        faults.add(place, found, remedy);
        return faults.outcome(() -> Optional.<T>empty().orElseThrow());
    }
}
