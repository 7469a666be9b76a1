package rainward.daemon.settings;

import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;

/** Amounts and lengths of time as people write them, in settings and in commands. */
public final class Written {

    private static final Pattern NUMBER_AND_UNIT =
            Pattern.compile("([-+]?[0-9]*\\.?[0-9]+)\\s*([A-Za-z%/]+)");

    private static final Map<String, String> OTHER_SPELLINGS = Map.ofEntries(
            Map.entry("acre", "ac"),
            Map.entry("acres", "ac"),
            Map.entry("hectare", "ha"),
            Map.entry("hectares", "ha"),
            Map.entry("feet", "ft"),
            Map.entry("foot", "ft"),
            Map.entry("inch", "in"),
            Map.entry("inches", "in"),
            Map.entry("lbs", "lb"),
            Map.entry("pound", "lb"),
            Map.entry("pounds", "lb"),
            Map.entry("lbs/ac", "lb/ac"),
            Map.entry("lb/acre", "lb/ac"),
            Map.entry("lbs/acre", "lb/ac"),
            Map.entry("miles", "mi"));

    /**
     * Big units of mass: a US short ton is 2,000 lb (NIST Handbook 44, appendix C), a tonne 1,000
     * kg.
     */
    private static final Map<String, Big> BIG = Map.of(
            "ton", new Big("lb", 2_000), "tons", new Big("lb", 2_000), "t", new Big("kg", 1_000));

    /** So many of a unit. */
    private record Big(String unit, double count) {}

    private static final Map<String, Duration> TIMES = Map.of(
            "s", Duration.ofSeconds(1),
            "min", Duration.ofMinutes(1),
            "h", Duration.ofHours(1),
            "d", Duration.ofDays(1));

    private Written() {}

    /**
     * An amount that somebody wrote.
     *
     * @param inside in the unit used inside
     * @param units that it was written in
     */
    public record Given(double inside, UnitSystem units) {}

    /** An amount with its unit, in the unit used inside; empty where it is not one. */
    static Optional<Double> amount(String text, Quantity quantity) {
        return given(text, quantity).map(Given::inside);
    }

    /** An amount with its unit; empty where it is not one. */
    public static Optional<Given> given(String text, Quantity quantity) {
        Matcher parts = NUMBER_AND_UNIT.matcher(text.strip());
        if (!parts.matches()) {
            return Optional.empty();
        }
        String unit = OTHER_SPELLINGS.getOrDefault(
                parts.group(2).toLowerCase(Locale.ROOT), parts.group(2));
        Big big = quantity == Quantity.MASS
                ? BIG.getOrDefault(unit, new Big(unit, 1))
                : new Big(unit, 1);
        double number = Double.parseDouble(parts.group(1)) * big.count();
        return UnitSystem.of(quantity, big.unit())
                .map(units -> new Given(units.inside(quantity, number), units));
    }

    /** A length of time: {@code 20 s}, {@code 90 min}, {@code 4 h}, {@code 2 d}. */
    static Optional<Duration> span(String text) {
        Matcher parts = NUMBER_AND_UNIT.matcher(text.strip());
        return parts.matches()
                ? Optional.ofNullable(TIMES.get(parts.group(2)))
                        .map(unit -> scaled(unit, Double.parseDouble(parts.group(1))))
                : Optional.empty();
    }

    private static Duration scaled(Duration unit, double number) {
        return Duration.ofMillis(Math.round(unit.toMillis() * number));
    }

    /** A share: {@code 60 %}. */
    static Optional<Double> share(String text) {
        Matcher parts = NUMBER_AND_UNIT.matcher(text.strip());
        return parts.matches() && parts.group(2).equals("%")
                ? Optional.of(Double.parseDouble(parts.group(1)) / 100)
                : Optional.empty();
    }

    /** A length of time as it would be written in the file. */
    static String words(Duration span) {
        if (span.toMillis() % 1000 != 0) {
            return span.toMillis() / 1000.0 + " s";
        }
        if (span.toSeconds() % 60 != 0 || span.isZero()) {
            return span.toSeconds() + " s";
        }
        if (span.toMinutes() % 60 != 0) {
            return span.toMinutes() + " min";
        }
        return span.toHours() % 24 != 0 || span.toDays() < 2
                ? span.toHours() + " h"
                : span.toDays() + " d";
    }
}
