package rainward.feed.hourly;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rainward.feed.reading.Notes;
import rainward.feed.reading.Spell;
import rainward.weather.sky.AirPhysics;
import rainward.weather.sky.HourlyAir;

/**
 * Makes hours without gaps from layers with gaps, by stated rules, each told in a note:
 *
 * <ul>
 *   <li>a gap of up to 6 h is bridged in a straight line, at an end the nearest value is held;
 *   <li>a longer gap in temperature ends the series (up to 12 h at its start are held);
 *   <li>dew point is reckoned from relative humidity (FAO56 eq. 11 solved for temperature), and
 *       where that is missing too it is the lowest temperature within 12 h (FAO56 eq. 48);
 *   <li>wind that nobody gives is 2 m/s at 2 m (FAO56 ch. 3, the world's mean);
 *   <li>sky that nobody gives is half covered (our own assumption).
 * </ul>
 */
public final class HourlyFill {

    private static final int BRIDGE_HOURS = 6;
    private static final int LATE_START_HOURS = 12;
    private static final int LONGEST_HOURS = 16 * 24;
    private static final double USUAL_WIND_MPS = 2.0;
    private static final double MAST_M = 10;
    private static final double USUAL_COVER = 0.5;

    /** No dew point was ever measured beyond these (values from memory) [C]. */
    private static final double LEAST_DEW_C = -80;

    private static final double MOST_DEW_C = 40;

    private final AirLayers layers;
    private final Notes notes;

    HourlyFill(AirLayers layers, Notes notes) {
        this.layers = layers;
        this.notes = notes;
    }

    /** Hours from the present on; empty where temperature is not known from about now. */
    Optional<HourlyAir> from(Instant asOf) {
        Instant start = fullHour(asOf);
        int span = hoursTo(start, layers.airTempC());
        double[] temp = Spell.hourly(layers.airTempC(), start, Math.max(0, span));
        int first = firstKnown(temp);
        if (first < 0 || first > LATE_START_HOURS) {
            return Optional.empty();
        }
        if (first > 0) {
            notes.say("temperature: begins " + first + " h late, first value held back to now");
            Arrays.fill(temp, 0, first, temp[first]);
        }
        int hours = beforeLongGap(temp);
        temp = bridged("temperature", Arrays.copyOf(temp, hours));
        double[] dew = dewPoint(start, temp);
        double[] wind = orUsual("windSpeed", sampled(layers.wind10Mps(), start, hours), -1);
        double[] sky = orUsual("skyCover", sampled(layers.skyCoverFraction(), start, hours), 1);
        return Optional.of(new HourlyAir(start, temp, dew, toTwoMetres(wind), sky));
    }

    public static Instant fullHour(Instant instant) {
        return Instant.ofEpochSecond(Math.floorDiv(instant.getEpochSecond(), 3600L) * 3600);
    }

    private static int hoursTo(Instant start, List<Spell> spells) {
        if (spells.isEmpty()) {
            return 0;
        }
        Instant end = spells.get(spells.size() - 1).window().to();
        long hours = Duration.between(start, end).toHours();
        return (int) Math.max(0, Math.min(LONGEST_HOURS, hours));
    }

    private static double[] sampled(List<Spell> spells, Instant start, int hours) {
        return Spell.hourly(spells, start, hours);
    }

    private int beforeLongGap(double[] values) {
        int gap = 0;
        for (int h = 0; h < values.length; h++) {
            gap = Double.isNaN(values[h]) ? gap + 1 : 0;
            if (gap > BRIDGE_HOURS) {
                int end = h - gap + 1;
                notes.say(
                        "temperature: unknown for more than 6 h, series ends after " + end + " h");
                return end;
            }
        }
        return values.length;
    }

    /** Bridges gaps of up to six hours; longer ones stay NaN. */
    private double[] bridged(String layer, double[] values) {
        double[] full = values.clone();
        int filled = 0;
        for (int h = 0; h < values.length; h++) {
            if (Double.isNaN(values[h])) {
                int before = lastKnown(values, h);
                int after = nextKnown(values, h);
                full[h] = between(values, before, h, after);
                filled += Double.isNaN(full[h]) ? 0 : 1;
            }
        }
        if (filled > 0) {
            notes.say(layer + ": " + filled + " h missing, filled from their neighbours");
        }
        return full;
    }

    private static double between(double[] values, int before, int h, int after) {
        boolean left = before >= 0;
        boolean right = after < values.length;
        int gap = Math.min(after, values.length) - Math.max(before, -1) - 1;
        if (gap > BRIDGE_HOURS || !(left || right)) {
            return Double.NaN;
        }
        if (!left) {
            return values[after];
        }
        return right
                ? values[before]
                        + (values[after] - values[before]) * (h - before) / (after - before)
                : values[before];
    }

    private double[] dewPoint(Instant start, double[] temp) {
        double[] dew = sampled(layers.dewPointC(), start, temp.length);
        double[] humidity = sampled(layers.humidityFraction(), start, temp.length);
        int reckoned = 0;
        for (int h = 0; h < dew.length; h++) {
            dew[h] = heldAtSaturation(dew[h], temp[h]);
            if (Double.isNaN(dew[h]) && humidity[h] > 0) {
                dew[h] = possible(
                        AirPhysics.dewPointC(humidity[h] * AirPhysics.saturationKpa(temp[h])));
                reckoned++;
            }
        }
        if (reckoned > 0) {
            notes.say("dewpoint: " + reckoned + " h missing, reckoned from relative humidity");
        }
        return orNightLow(bridged("dewpoint", dew), temp);
    }

    private static double possible(double dewC) {
        return Math.max(LEAST_DEW_C, Math.min(MOST_DEW_C, dewC));
    }

    /** Rounding may put dew point a little above temperature: saturated. More is a bad value. */
    private double heldAtSaturation(double dewC, double tempC) {
        if (dewC > tempC + 1) {
            notes.leftOut("dewpoint", "it lies above the temperature");
            return Double.NaN;
        }
        return Double.isNaN(dewC) ? dewC : Math.min(dewC, tempC);
    }

    private double[] orNightLow(double[] dew, double[] temp) {
        int assumed = 0;
        for (int h = 0; h < dew.length; h++) {
            if (Double.isNaN(dew[h])) {
                int from = Math.max(0, h - 12);
                int to = Math.min(temp.length, h + 13);
                dew[h] = possible(Arrays.stream(temp, from, to).min().orElse(temp[h]));
                assumed++;
            }
        }
        if (assumed > 0) {
            notes.say("dewpoint: " + assumed + " h unknown, taken as the night's low temperature");
        }
        return dew;
    }

    /** Fills what is still unknown with the usual value; {@code sign} below zero: wind at 10 m. */
    private double[] orUsual(String layer, double[] values, int sign) {
        double[] full = bridged(layer, values);
        double usual = sign < 0 ? USUAL_WIND_MPS / AirPhysics.windAt2mMps(1, MAST_M) : USUAL_COVER;
        int assumed = 0;
        for (int h = 0; h < full.length; h++) {
            if (Double.isNaN(full[h])) {
                full[h] = usual;
                assumed++;
            }
        }
        if (assumed > 0) {
            String what = sign < 0 ? "2 m/s at 2 m" : "half covered";
            notes.say(layer + ": " + assumed + " h unknown, assumed " + what);
        }
        return full;
    }

    private static double[] toTwoMetres(double[] windMps) {
        return Arrays.stream(windMps)
                .map(u -> AirPhysics.windAt2mMps(u, MAST_M))
                .toArray();
    }

    private static int firstKnown(double[] values) {
        int h = nextKnown(values, 0);
        return h < values.length ? h : -1;
    }

    private static int nextKnown(double[] values, int from) {
        int h = from;
        while (h < values.length && Double.isNaN(values[h])) {
            h++;
        }
        return h;
    }

    private static int lastKnown(double[] values, int from) {
        int h = from;
        while (h >= 0 && Double.isNaN(values[h])) {
            h--;
        }
        return h;
    }
}
