package rainward.weather.trace;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import rainward.farm.GeoPoint;

/**
 * A Gaussian field over points and time, one for each trace: correlation {@code exp(-d/d0)} between
 * points (Cholesky) and {@code exp(-t/t0)} in time (first-order autoregression). The noise of an
 * instant depends on the seed and that instant alone, so that a round an hour later meets nearly
 * the same traces and an unchanged forecast leaves the order unchanged.
 */
final class LatentField {

    private static final long GOLDEN = 0x9E3779B97F4A7C15L;

    /** Rows that are added in one pass, so that each value is fetched and stored once for them. */
    private static final int ABREAST = 4;

    private final TraceSettings settings;
    private final double[][] root;
    private final double[][] own;
    private final double[] here;
    private Instant at = Instant.MIN;

    LatentField(TraceSettings settings, List<GeoPoint> points) {
        this.settings = settings;
        this.root = root(correlation(points, settings.dependence().decorrelationKm()));
        this.own = new double[points.size()][settings.traces()];
        this.here = new double[settings.traces()];
    }

    /** Random numbers that belong to an instant. */
    UniformRandomProvider randomAt(Instant instant) {
        return RandomSource.XO_RO_SHI_RO_128_PP.create(
                settings.seed() * GOLDEN + instant.getEpochSecond());
    }

    /**
     * Moves on to a later instant. What moves is the noise that each point has of its own; since
     * all points forget alike, {@link #at} may join it when asked, and dry points cost nothing.
     *
     * @param instant after the one before
     * @param random numbers of that instant
     */
    void moveTo(Instant instant, UniformRandomProvider random) {
        double keep = at.equals(Instant.MIN) ? 0 : kept(instant);
        double fresh = Math.sqrt(1 - keep * keep);
        ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(random);
        for (double[] row : own) {
            for (int n = 0; n < row.length; n++) {
                row[n] = keep * row[n] + fresh * normal.sample();
            }
        }
        at = instant;
    }

    /**
     * Standard normal value of each trace at a point; the array is used again at the next call.
     *
     * @param point index among the points
     */
    double[] at(int point) {
        double[] factors = root[point];
        int q = (point + 1) % ABREAST;
        Arrays.fill(here, 0);
        for (int k = 0; k < q; k++) {
            for (int n = 0; n < here.length; n++) {
                here[n] += factors[k] * own[k][n];
            }
        }
        for (; q <= point; q += ABREAST) {
            addAbreast(factors, q);
        }
        return here;
    }

    private void addAbreast(double[] factors, int q) {
        double a = factors[q];
        double b = factors[q + 1];
        double c = factors[q + 2];
        double d = factors[q + 3];
        double[] first = own[q];
        double[] second = own[q + 1];
        double[] third = own[q + 2];
        double[] fourth = own[q + 3];
        for (int n = 0; n < here.length; n++) {
            here[n] += a * first[n] + b * second[n] + c * third[n] + d * fourth[n];
        }
    }

    private double kept(Instant instant) {
        double hours = (instant.getEpochSecond() - at.getEpochSecond()) / 3600.0;
        return Math.exp(-hours / settings.dependence().persistenceHours());
    }

    private static double[][] correlation(List<GeoPoint> points, double decorrelationKm) {
        double[][] matrix = new double[points.size()][points.size()];
        for (int p = 0; p < matrix.length; p++) {
            for (int q = 0; q < p; q++) {
                double km = points.get(p).distanceKm(points.get(q));
                matrix[p][q] = Math.exp(-km / decorrelationKm);
            }
            matrix[p][p] = 1;
        }
        return matrix;
    }

    /** Cholesky root of a correlation matrix; points in one place share their noise. */
    private static double[][] root(double[][] matrix) {
        double[][] lower = new double[matrix.length][matrix.length];
        for (int p = 0; p < matrix.length; p++) {
            for (int q = 0; q <= p; q++) {
                double rest = matrix[p][q];
                for (int k = 0; k < q; k++) {
                    rest -= lower[p][k] * lower[q][k];
                }
                if (p == q) {
                    lower[p][p] = rest > 1e-12 ? Math.sqrt(rest) : 0;
                } else {
                    lower[p][q] = lower[q][q] > 0 ? rest / lower[q][q] : 0;
                }
            }
        }
        return lower;
    }
}
