package rainward.input;

import rainward.farm.Quantity;
import rainward.farm.UnitSystem;

/** Published examples are in acres and pounds; they come in through the program's own door. */
public final class Us {
    private Us() {}

    public static double kg(double pounds) {
        return UnitSystem.US_CUSTOMARY.inside(Quantity.MASS, pounds);
    }

    public static double lb(double massKg) {
        return UnitSystem.US_CUSTOMARY.shown(Quantity.MASS, massKg);
    }

    public static double ha(double acres) {
        return UnitSystem.US_CUSTOMARY.inside(Quantity.AREA, acres);
    }

    public static double acres(double areaHa) {
        return UnitSystem.US_CUSTOMARY.shown(Quantity.AREA, areaHa);
    }

    public static double kgPerHa(double lbPerAcre) {
        return UnitSystem.US_CUSTOMARY.inside(Quantity.RATE, lbPerAcre);
    }

    public static double lbPerAcre(double rateKgPerHa) {
        return UnitSystem.US_CUSTOMARY.shown(Quantity.RATE, rateKgPerHa);
    }

    public static double m(double feet) {
        return UnitSystem.US_CUSTOMARY.inside(Quantity.WIDTH, feet);
    }

    public static double cm(double inches) {
        return UnitSystem.US_CUSTOMARY.inside(Quantity.DEPTH, inches);
    }

    public static double ft(double widthM) {
        return UnitSystem.US_CUSTOMARY.shown(Quantity.WIDTH, widthM);
    }
}
