package rainward.input;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.farm.Require;

/**
 * What a laboratory found in the soil of a field; what it was not asked for is empty.
 *
 * @param field its name
 * @param sampledOn day the cores were pulled
 * @param acidity as reported
 * @param nutrients as reported
 */
public record SoilTest(String field, LocalDate sampledOn, Acidity acidity, Nutrients nutrients) {

    /** Common practice, no source: fields are sampled again every three years. */
    public static final int USUAL_YEARS = 3;

    public SoilTest {
        Require.named("field", field);
    }

    /** True from the day on which the test is so many years old. */
    public boolean isOld(LocalDate today, int years) {
        return !today.isBefore(sampledOn.plusYears(years));
    }

    /** What to say of the age of the test, where it is too old to rest on. */
    public Optional<Gap> ageGap(LocalDate today, int years) {
        return isOld(today, years)
                ? Optional.of(new Gap(
                        field,
                        "soil test is of " + sampledOn + ", " + years + " years old or more",
                        "sample again before spending on lime or fertilizer"))
                : Optional.empty();
    }

    /**
     * Acidity.
     *
     * @param ph in water
     * @param buffer how much acid the soil holds back, if it was measured
     */
    public record Acidity(double ph, Optional<Buffer> buffer) {

        public Acidity {
            Require.inRange("ph", ph, 3, 10);
        }
    }

    /**
     * A buffer reading; two methods give two numbers, so the method belongs to it.
     *
     * @param method for instance {@code SMP} or {@code Mehlich}
     * @param ph of soil and buffer together
     */
    public record Buffer(String method, double ph) {

        public Buffer {
            Require.named("buffer method", method);
            Require.inRange("buffer ph", ph, 4, 8);
        }
    }

    /**
     * Phosphorus and potassium.
     *
     * @param phosphorus if it was measured
     * @param potassium if it was measured
     * @param exchangeCmolPerKg cation exchange capacity [cmol/kg, the same number as meq/100 g]
     */
    public record Nutrients(
            Optional<Extract> phosphorus,
            Optional<Extract> potassium,
            OptionalDouble exchangeCmolPerKg) {
        public static final Nutrients UNKNOWN =
                new Nutrients(Optional.empty(), Optional.empty(), OptionalDouble.empty());

        public Nutrients {
            exchangeCmolPerKg.ifPresent(cec -> Require.inRange("exchangeCmolPerKg", cec, 0, 100));
        }
    }

    /**
     * What an extraction gave; the number means nothing without its method.
     *
     * @param method for instance {@code Bray P1} or {@code Mehlich-3}
     * @param foundPpm extracted [mg/kg]
     */
    public record Extract(String method, double foundPpm) {

        public Extract {
            Require.named("extraction method", method);
            Require.inRange("foundPpm", foundPpm, 0, 5_000);
        }
    }
}
