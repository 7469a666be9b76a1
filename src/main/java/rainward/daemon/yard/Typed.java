package rainward.daemon.yard;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Written;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;

/** What people type, turned into units inside; what cannot be read is refused in one sentence. */
public final class Typed {

    private static final Pattern BARE = Pattern.compile("[0-9]*\\.?[0-9]+");

    private Typed() {}

    /** An amount above nothing, or nothing at all; a bare number is in the units of the farm. */
    public static double amount(String what, String text, Quantity quantity, UnitSystem farm) {
        String plain = text.strip();
        if (BARE.matcher(plain).matches()) {
            return farm.inside(quantity, Double.parseDouble(plain));
        }
        Optional<Written.Given> given =
                Written.given(plain, quantity).filter(one -> one.inside() >= 0);
        if (given.isPresent()) {
            return given.get().inside();
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
