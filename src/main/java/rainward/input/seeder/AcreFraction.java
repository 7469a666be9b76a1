package rainward.input.seeder;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rainward.farm.Quantity;
import rainward.farm.Require;
import rainward.farm.UnitSystem;

/**
 * A small part of an acre, as extension bulletins use it for catch tests: 1/10, 1/20, 1/40, 1/50 or
 * 1/100.
 *
 * @param parts of an acre, 2 to 10000
 */
public record AcreFraction(int parts) {
    private static final Pattern FORM = Pattern.compile("1/(\\d{1,5})");

    public AcreFraction {
        Require.inRange("parts of an acre", parts, 2, 10_000);
    }

    /** Reads {@code 1/20}. */
    public static AcreFraction parse(String text) {
        Matcher form = FORM.matcher(text.strip());
        Require.that(
                form.matches(),
                "fraction of an acre is '" + text + "', must be 1 over a whole number: 1/20");
        return new AcreFraction(Integer.parseInt(form.group(1)));
    }

    public double areaHa() {
        return UnitSystem.US_CUSTOMARY.inside(Quantity.AREA, 1) / parts;
    }

    /** A strip of this area at a working width. */
    public CatchStrip strip(double widthM) {
        return CatchStrip.ofArea(widthM, areaHa());
    }
}
