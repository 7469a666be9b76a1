package rainward.daemon.settings;

import java.time.Duration;
import java.util.Optional;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;

/** What a value may be, and what it is where nobody says. */
final class Bounds {

    private Bounds() {}

    /**
     * A whole number.
     *
     * @param usual where the key is left out
     */
    record Whole(long usual, long least, long most) {}

    /**
     * A number without a unit.
     *
     * @param usual where the key is left out; empty: it must be given
     */
    record Real(Optional<Double> usual, double least, double most) {

        static Real usually(double usual, double least, double most) {
            return new Real(Optional.of(usual), least, most);
        }
    }

    /**
     * A number with a unit; all values in the unit used inside.
     *
     * @param quantity what is measured
     * @param usual where the key is left out; empty: it must be given
     */
    record Amount(Quantity quantity, Optional<Double> usual, double least, double most) {

        static Amount given(Quantity quantity, double least, double most) {
            return new Amount(quantity, Optional.empty(), least, most);
        }

        static Amount usually(Quantity quantity, double usual, double least, double most) {
            return new Amount(quantity, Optional.of(usual), least, most);
        }

        String words(UnitSystem units) {
            return "must be " + units.text(quantity, least, 2) + " to "
                    + units.text(quantity, most, 2) + ": a number, or a text with its unit, "
                    + UnitSystem.US_CUSTOMARY.symbol(quantity) + " or "
                    + UnitSystem.METRIC.symbol(quantity);
        }
    }

    /**
     * A length of time.
     *
     * @param usual where the key is left out; empty: it must be given
     */
    record Span(Optional<Duration> usual, Duration least, Duration most) {

        static Span usually(Duration usual, Duration least, Duration most) {
            return new Span(Optional.of(usual), least, most);
        }
    }
}
