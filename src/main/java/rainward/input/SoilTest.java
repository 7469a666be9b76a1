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
     * @param method of extraction, for instance {@code Mehlich-3}; the levels mean nothing without
     * @param phosphorusPpm extracted [mg/kg]
     * @param potassiumPpm extracted [mg/kg]
     * @param exchangeCmolPerKg cation exchange capacity [cmol/kg, the same number as meq/100 g]
     */
    public record Nutrients(
            String method,
            OptionalDouble phosphorusPpm,
            OptionalDouble potassiumPpm,
            OptionalDouble exchangeCmolPerKg) {

        public Nutrients {
            Require.named("extraction method", method);
            phosphorusPpm.ifPresent(ppm -> Require.inRange("phosphorusPpm", ppm, 0, 2_000));
            potassiumPpm.ifPresent(ppm -> Require.inRange("potassiumPpm", ppm, 0, 5_000));
            exchangeCmolPerKg.ifPresent(cec -> Require.inRange("exchangeCmolPerKg", cec, 0, 100));
        }
    }
}
