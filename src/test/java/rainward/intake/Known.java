package rainward.intake;

import java.util.List;
import java.util.Map;

/** What the invented farm of these tests knows by name. */
final class Known {

    static final KnownNames NAMES = new KnownNames(
            List.of("turnip and rape", "late rye"),
            List.of("full", "worked ground"),
            new TextureClasses(Map.of(
                    "sandy loam", new TextureClasses.Minerals(0.65, 0.10),
                    "loam", new TextureClasses.Minerals(0.40, 0.20))),
            new KnownNames.UsualGround(2.5, 0.02));

    private Known() {}

    static <T> T accepted(Intake<T> intake) {
        if (intake instanceof Intake.Accepted<T> accepted) {
            return accepted.value();
        }
        throw new AssertionError(((Intake.Rejected<T>) intake).words());
    }

    static List<String> warnings(Intake<?> intake) {
        if (intake instanceof Intake.Accepted<?> accepted) {
            return accepted.warnings().stream().map(InputFault::words).toList();
        }
        throw new AssertionError(((Intake.Rejected<?>) intake).words());
    }

    static List<String> faults(Intake<?> intake) {
        return intake instanceof Intake.Rejected<?> rejected
                ? rejected.faults().stream().map(InputFault::words).toList()
                : List.of();
    }
}
