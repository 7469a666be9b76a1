package rainward.daemon.yard.command;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rainward.daemon.yard.Typed;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;

/** What a kitchen scale shows: grams and ounces beside pounds and kilograms. */
final class Grams {

    private static final Pattern SMALL = Pattern.compile("([0-9]*\\.?[0-9]+)\\s*(g|oz)");
    private static final double OUNCES_IN_A_POUND = 16;

    private Grams() {}

    static double massKg(String what, String text, UnitSystem farm) {
        Matcher small = SMALL.matcher(text.strip());
        if (!small.matches()) {
            return Typed.amount(what, text, Quantity.MASS, farm);
        }
        double number = Double.parseDouble(small.group(1));
        return small.group(2).equals("g")
                ? number / 1000
                : UnitSystem.US_CUSTOMARY.inside(Quantity.MASS, number / OUNCES_IN_A_POUND);
    }
}
