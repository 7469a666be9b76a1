package rainward;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A quantity says its unit in its name, or is one of the few that have none. */
class UnitNamesTest {

    /**
     * Units as names write them; "Per" joins them, and a product is written without a joint
     * ({@code waterM3PerM3}, {@code thermalTimeCd}, {@code hydrothermalTimeMpaDays}).
     */
    static final List<String> UNITS = List.of(
            // length, area, volume
            "Mm",
            "Cm",
            "M",
            "Km",
            "M2",
            "Ha",
            "M3",
            "L",
            // mass and force
            "G",
            "Kg",
            "Kn",
            "Kpa",
            "Mpa",
            "Hpa",
            // time and speed
            "Seconds",
            "Minutes",
            "H",
            "Hour",
            "Minute",
            "Hours",
            "Day",
            "Days",
            "Mps",
            "Kmh",
            // warmth and radiation
            "C",
            "K",
            "Cd",
            "Ch",
            "W",
            "J",
            "Kj",
            "Mj",
            // parts of a whole, angles, counts and money
            "Fraction",
            "Pct",
            "Ppm",
            "Deg",
            "Rad",
            "Plants",
            "Seeds",
            "Bags",
            "Usd");

    /**
     * Quantities without a unit: alone, as the last word of a name, or in the plural as the name of
     * a record that holds nothing else.
     */
    static final Set<String> PLAIN = Set.of(
            "chance",
            "coefficient",
            "confidence",
            "correlation",
            "count",
            "curveNumber",
            "efficiency",
            "exponent",
            "factor",
            "index",
            "offset",
            "ph",
            "price",
            "priority",
            "probability",
            "quantile",
            "ratio",
            "readiness",
            "rmse",
            "score",
            "shape",
            "share",
            "skill",
            "stock",
            "sums",
            "value",
            "weight",
            "worth");

    /** Names that the JSON of the commands has promised to keep. */
    static final Set<String> PROMISED = Set.of(
            "acres",
            "chanceOfStand",
            "chanceNow",
            "best",
            "bound",
            "r",
            "bucketR",
            "bias",
            "low",
            "middle",
            "high",
            "now",
            "gain",
            "mean",
            "acresEstablished",
            "acresSeeded",
            "falseStarts",
            "washedOut",
            "km",
            "orderChanges",
            "worthCi95",
            "vsAsListed",
            "vsBestHabit",
            "byTenDays",
            "physicsMsPerField",
            "tracesMs",
            "msPerField");

    private static final Pattern UNIT = unitAtTheEnd();

    private static final Pattern WORD = Pattern.compile(PLAIN.stream()
            .map(word -> word + "|.*[a-z0-9]" + capitalised(word))
            .collect(Collectors.joining("|")));

    /** A unit or "Per" and a unit, after at least one word in lower case. */
    private static Pattern unitAtTheEnd() {
        String product = "(?:" + String.join("|", UNITS) + ")+";
        String per = "(?:Per" + product + ")";
        return Pattern.compile(".*[a-z0-9](?:" + product + per + "*|" + per + "+)");
    }

    private static String capitalised(String word) {
        return Character.toUpperCase(word.charAt(0)) + word.substring(1);
    }

    static boolean saysItsUnit(String name) {
        return UNIT.matcher(name).matches() || WORD.matcher(name).matches();
    }

    private static boolean holdsOnlyOneWord(Class<?> type) {
        return PLAIN.stream()
                .anyMatch(word -> type.getSimpleName().equals(capitalised(word) + "s"));
    }

    private static boolean isCoreRecord(JavaClass type) {
        return type.isRecord()
                && PackageFlowTest.CORE.stream().anyMatch(name -> livesIn(type, name));
    }

    private static boolean livesIn(JavaClass type, String name) {
        return (type.getPackageName() + ".").startsWith("rainward." + name + ".");
    }

    /** A double, alone, optional or in an array of any depth. */
    private static boolean isQuantity(RecordComponent component) {
        Class<?> type = component.getType();
        while (type.isArray()) {
            type = type.getComponentType();
        }
        return type == double.class || type == float.class || type == OptionalDouble.class;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rainMm",
                "waterM3PerM3",
                "thermalTimeCd",
                "seedsPerKg",
                "chance",
                "pullChance",
                "hydrothermalTimeMpaDays",
                "workRateHaPerH",
                "yieldKgPerHaPerDay"
            })
    void acceptsANameWithItsUnit(String name) {
        assertThat(saysItsUnit(name)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rain",
                "temperatureMax",
                "depth",
                "windMs",
                "chanceOf",
                "mm",
                "ratePer",
                "unworth"
            })
    void refusesANameWithoutOne(String name) {
        assertThat(saysItsUnit(name)).isFalse();
    }

    @Test
    void everyNumberInARecordOfTheCoreSaysItsUnit() {
        List<String> silent = PackageFlowTest.PROGRAM.stream()
                .filter(UnitNamesTest::isCoreRecord)
                .map(JavaClass::reflect)
                .flatMap(type -> Arrays.stream(type.getRecordComponents()))
                .filter(UnitNamesTest::isQuantity)
                .filter(component -> !holdsOnlyOneWord(component.getDeclaringRecord()))
                .filter(component -> !saysItsUnit(component.getName()))
                .filter(component -> !PROMISED.contains(component.getName()))
                .map(c -> c.getDeclaringRecord().getName() + "." + c.getName())
                .sorted()
                .toList();

        assertThat(silent).as("end the name in its unit, or in a word of PLAIN").isEmpty();
    }
}
