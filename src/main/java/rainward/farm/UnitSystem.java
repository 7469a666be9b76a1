package rainward.farm;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The units a person reads and writes. Numbers are turned once, at the door; inside, every name
 * tells its unit.
 */
public enum UnitSystem {
    US_CUSTOMARY,
    METRIC;

    private static final double IN_TONS_FROM = 5;
    private static final double WHOLE_FROM = 100;

    /** Value in the unit that the person reads. */
    public double shown(Quantity quantity, double inside) {
        return quantity.in(this).shown(inside);
    }

    /** Value in the unit used inside, from what the person wrote. */
    public double inside(Quantity quantity, double shown) {
        return quantity.in(this).inside(shown);
    }

    /** Symbol of the unit that the person reads. */
    public String symbol(Quantity quantity) {
        return quantity.in(this).symbol();
    }

    /** The system whose symbol a person wrote, in whatever case; empty where it is of neither. */
    public static Optional<UnitSystem> of(Quantity quantity, String symbol) {
        return Stream.of(values())
                .filter(units -> units.symbol(quantity).equalsIgnoreCase(symbol))
                .findFirst();
    }

    /** Number and unit, with the usual decimals and no trailing zeros: {@code 0.5 in}. */
    public String text(Quantity quantity, double inside) {
        return text(quantity, inside, quantity.in(this).decimals());
    }

    /** Number and unit with at most so many decimals. */
    public String text(Quantity quantity, double inside, int decimals) {
        return number(shown(quantity, inside), decimals) + " " + symbol(quantity);
    }

    public String area(double areaHa) {
        return text(Quantity.AREA, areaHa);
    }

    /** As read from a gauge: hundredths of an inch or tenths of a millimetre. */
    public String rain(double rainMm) {
        return text(Quantity.RAIN, rainMm);
    }

    /** As spoken of ahead of time: tenths of an inch or whole millimetres. */
    public String roughRain(double rainMm) {
        return text(Quantity.RAIN, rainMm, this == US_CUSTOMARY ? 1 : 0);
    }

    /** Whether rain spoken of ahead of time would be rounded to nothing. */
    public boolean roundsToDry(double rainMm) {
        return roughRain(rainMm).equals(roughRain(0));
    }

    /** The least rain that is spoken of ahead of time. */
    public String leastRoughRain() {
        return roughRain(inside(Quantity.RAIN, this == US_CUSTOMARY ? 0.1 : 1));
    }

    public String depth(double depthCm) {
        return text(Quantity.DEPTH, depthCm);
    }

    /** As a seeder is set: eighths of an inch, or millimetres. */
    public String sowingDepth(double depthCm) {
        if (this == METRIC) {
            return Math.round(depthCm * 10) + " mm";
        }
        double eighths = Math.rint(8 * shown(Quantity.DEPTH, depthCm));
        return depth(inside(Quantity.DEPTH, eighths / 8));
    }

    public String temp(double tempC) {
        return text(Quantity.TEMPERATURE, tempC);
    }

    public String wind(double windMps) {
        return text(Quantity.WIND, windMps);
    }

    public String speed(double speedKmh) {
        return text(Quantity.SPEED, speedKmh);
    }

    /**
     * As a person says it: to the tenth of a pound or kilogram below a hundred, whole up to five
     * tons, and from there, where a tenth of a ton is at most two parts in a hundred, in tons.
     */
    public String mass(double massKg) {
        double tons = massKg / kgPerTon();
        if (tons >= IN_TONS_FROM) {
            return number(tons, 1) + (this == US_CUSTOMARY ? " tons" : " t");
        }
        boolean light = shown(Quantity.MASS, massKg) < WHOLE_FROM;
        return text(Quantity.MASS, massKg, light ? 1 : 0);
    }

    /** The short ton of 2000 pounds and the tonne (NIST SP 811, appendix B). */
    private double kgPerTon() {
        return this == US_CUSTOMARY ? inside(Quantity.MASS, 2_000) : 1_000;
    }

    public String rate(double rateKgPerHa) {
        return text(Quantity.RATE, rateKgPerHa);
    }

    public String distance(double distanceKm) {
        return text(Quantity.DISTANCE, distanceKm);
    }

    public String width(double widthM) {
        return text(Quantity.WIDTH, widthM);
    }

    private static String number(double value, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
