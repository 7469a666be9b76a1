package rainward.feed.reading;

import static java.util.Map.entry;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/** A quantity as we reckon with it, in SI, with the units that services use for it. */
public enum Quantity {
    /** [C], believable at the ground anywhere people sow. */
    AIR_TEMP(-60, 60, Units.TEMPERATURE),
    /** [C] */
    DEW_POINT(-80, 40, Units.TEMPERATURE),
    /** [0..1] */
    SHARE(0, 1, Units.SHARE),
    /** [m/s] */
    WIND(0, 100, Units.SPEED),
    /** Rain of one interval [mm]. */
    RAIN(0, 500, Units.LENGTH);

    private final double least;
    private final double greatest;
    private final Map<String, DoubleUnaryOperator> units;

    Quantity(double least, double greatest, Map<String, DoubleUnaryOperator> units) {
        this.least = least;
        this.greatest = greatest;
        this.units = units;
    }

    /**
     * What a value in an answer says.
     *
     * @param si in SI; empty where it says nothing that can be used
     * @param whyNot the reason, to stand behind "because"; blank where there is a value
     */
    public record Said(OptionalDouble si, String whyNot) {

        static Said nothing(String why) {
            return new Said(OptionalDouble.empty(), why);
        }
    }

    /** True for a unit code that this quantity can have. */
    public boolean knows(String unit) {
        return from(unit).isPresent();
    }

    /**
     * Reads a value. Nothing is bent into range: what is not a number, has a unit that this
     * quantity cannot have or cannot be believed is unknown, and the answer says why.
     *
     * @param value as it stands in the answer
     * @param unit its code, with or without the prefix of its register
     */
    public Said read(JsonNode value, String unit) {
        if (Json.silent(value)) {
            return Said.nothing("it has no value");
        }
        Optional<DoubleUnaryOperator> toSi = from(unit);
        if (toSi.isEmpty()) {
            return Said.nothing(
                    unit.isBlank()
                            ? "it has no unit"
                            : "its unit '" + Json.cut(unit) + "' is unknown");
        }
        OptionalDouble number = Json.number(value);
        double si =
                number.isPresent() ? toSi.get().applyAsDouble(number.getAsDouble()) : Double.NaN;
        return si >= least && si <= greatest
                ? new Said(OptionalDouble.of(si), "")
                : Said.nothing(Json.words(value) + " is not believable");
    }

    private Optional<DoubleUnaryOperator> from(String code) {
        int colon = code.indexOf(':');
        return Optional.ofNullable(units.get(code.substring(colon + 1).strip()));
    }

    /** Unit codes after the prefix: the WMO register, UCUM, and the display text of Open-Meteo. */
    private static final class Units {

        static final Map<String, DoubleUnaryOperator> TEMPERATURE = Map.ofEntries(
                entry("degC", v -> v),
                entry("Cel", v -> v),
                entry("celsius", v -> v),
                entry("°C", v -> v),
                entry("degF", Units::celsius),
                entry("[degF]", Units::celsius),
                entry("fahrenheit", Units::celsius),
                entry("°F", Units::celsius),
                entry("K", v -> v - 273.15));

        static final Map<String, DoubleUnaryOperator> SHARE =
                Map.of("percent", v -> v / 100, "%", v -> v / 100, "1", v -> v);

        static final Map<String, DoubleUnaryOperator> SPEED = Map.ofEntries(
                entry("km_h-1", v -> v / 3.6),
                entry("km/h", v -> v / 3.6),
                entry("m_s-1", v -> v),
                entry("m/s", v -> v),
                entry("kt", v -> v * 1852 / 3600),
                entry("kn", v -> v * 1852 / 3600),
                entry("mi_h-1", v -> v * 0.44704),
                entry("mp/h", v -> v * 0.44704),
                entry("mph", v -> v * 0.44704));

        static final Map<String, DoubleUnaryOperator> LENGTH = Map.of(
                "mm", v -> v,
                "m", v -> v * 1000,
                "cm", v -> v * 10,
                "in", v -> v * 25.4,
                "[in_i]", v -> v * 25.4,
                "inch", v -> v * 25.4);

        private Units() {}

        private static double celsius(double fahrenheit) {
            return (fahrenheit - 32) / 1.8;
        }
    }
}
