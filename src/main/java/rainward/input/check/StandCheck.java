package rainward.input.check;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.farm.Require;

/**
 * The result of a look at a field, kept beside the chance it was given.
 *
 * @param field its name
 * @param lookedOn day of the look
 * @param targetShare share of the target that stands, 0 and more
 * @param verdict what the person says; the count proposes it
 * @param cause why it is not up; only where it is not
 * @param seedingChance of a stand, as given when seed went in
 */
public record StandCheck(
        String field,
        LocalDate lookedOn,
        double targetShare,
        StandVerdict verdict,
        Optional<StandVerdict.Cause> cause,
        OptionalDouble seedingChance) {

    public StandCheck {
        Require.named("field", field);
        Require.notNegative("targetShare", targetShare);
        Require.that(
                cause.isPresent() != (verdict == StandVerdict.UP),
                field + ": a thin or failed stand needs a cause, a stand that is up has none");
        seedingChance.ifPresent(chance -> Require.inRange("seedingChance", chance, 0, 1));
    }

    /** True where the field goes back in the queue. */
    public boolean comesBack() {
        return verdict != StandVerdict.UP;
    }
}
