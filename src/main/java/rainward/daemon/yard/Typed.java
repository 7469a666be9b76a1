package rainward.daemon.yard;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rainward.daemon.office.Refusal;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;

/** What people type, turned into units inside; what cannot be read is refused in one sentence. */
public final class Typed {

    private static final Pattern AMOUNT = Pattern.compile("([0-9]*\\.?[0-9]+)\\s*([A-Za-z/]*)");

    private static final Map<String, String> SPELLINGS = Map.ofEntries(
            Map.entry("acres", "ac"),
            Map.entry("acre", "ac"),
            Map.entry("lbs", "lb"),
            Map.entry("lbs/ac", "lb/ac"),
            Map.entry("lb/acre", "lb/ac"),
            Map.entry("feet", "ft"),
            Map.entry("hectares", "ha"));

    private Typed() {}

    /** An amount above nothing, or nothing at all; a bare number is in the units of the farm. */
    public static double amount(String what, String text, Quantity quantity, UnitSystem farm) {
        Matcher parts = AMOUNT.matcher(text.strip());
        if (parts.matches()) {
            double number = Double.parseDouble(parts.group(1));
            String unit = SPELLINGS.getOrDefault(
                    parts.group(2).toLowerCase(java.util.Locale.ROOT), parts.group(2));
            if (unit.isEmpty()) {
                return farm.inside(quantity, number);
            }
            Optional<UnitSystem> units = UnitSystem.of(quantity, unit);
            if (units.isPresent()) {
                return units.get().inside(quantity, number);
            }
        }
        throw Refusal.badInput(what + " is '" + text + "': write a number of 0 or more with its"
                + " unit, 12" + UnitSystem.US_CUSTOMARY.symbol(quantity) + " or 5"
                + UnitSystem.METRIC.symbol(quantity) + ".");
    }

    /** An amount above nothing. */
    public static double positive(String what, String text, Quantity quantity, UnitSystem farm) {
        double inside = amount(what, text, quantity, farm);
        if (inside <= 0) {
            throw Refusal.badInput(what + " is '" + text + "': it must be above 0.");
        }
        return inside;
    }

    /** Units by their word, else the farm's. */
    public static UnitSystem units(@Nullable String text, UnitSystem farm) {
        if (text == null) {
            return farm;
        }
        return switch (text.strip().toLowerCase(java.util.Locale.ROOT)) {
            case "us" -> UnitSystem.US_CUSTOMARY;
            case "metric" -> UnitSystem.METRIC;
            default -> throw Refusal.badInput("--units is '" + text + "': write us or metric.");
        };
    }

    /** A day, else the one given. */
    public static LocalDate day(@Nullable String text, LocalDate otherwise) {
        try {
            return Optional.ofNullable(text).map(LocalDate::parse).orElse(otherwise);
        } catch (DateTimeException e) {
            throw Refusal.badInput("'" + text + "' is no day: write it as 2026-07-14.");
        }
    }

    /** {@code turnip=12lb}: a name and an amount of it. */
    public static Map.Entry<String, String> pair(String what, String text) {
        int parting = text.lastIndexOf('=');
        if (parting < 1 || parting == text.length() - 1) {
            throw Refusal.badInput(
                    what + " is '" + text + "': write what and how much of it," + " turnip=12lb.");
        }
        return Map.entry(
                text.substring(0, parting).strip(), text.substring(parting + 1).strip());
    }
}
