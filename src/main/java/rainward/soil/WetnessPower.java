package rainward.soil;

/**
 * Wetness to a power of 0 to 16 by multiplication alone, so that loops over traces vectorise: the
 * whole part bit by bit, the rest by the chord {@code x^f ~ 1 - f + f x}, which lies above the
 * curve by at most a fifth where x is above 0.3.
 */
final class WetnessPower {

    final double rest;
    final double bit1;
    final double bit2;
    final double bit4;
    final double bit8;

    WetnessPower(double exponent) {
        int whole = (int) Math.floor(Math.min(exponent, 15.999));
        this.rest = exponent - whole;
        this.bit1 = whole & 1;
        this.bit2 = whole >> 1 & 1;
        this.bit4 = whole >> 2 & 1;
        this.bit8 = whole >> 3 & 1;
    }

    /** The power itself; loops write it out, for the compiler keeps their factors in registers. */
    double of(double x) {
        return raise(x, rest, bit1, bit2, bit4, bit8);
    }

    static double raise(double x, double rest, double b1, double b2, double b4, double b8) {
        double x2 = x * x;
        double x4 = x2 * x2;
        double x8 = x4 * x4;
        double low = (1 + rest * (x - 1)) * (1 + b1 * (x - 1));
        double high = (1 + b2 * (x2 - 1)) * (1 + b4 * (x4 - 1));
        return low * high * (1 + b8 * (x8 - 1));
    }
}
