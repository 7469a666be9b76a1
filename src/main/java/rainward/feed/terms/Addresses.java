package rainward.feed.terms;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.net.URI;
import java.util.Locale;
import okhttp3.HttpUrl;
import rainward.farm.GeoPoint;
import rainward.farm.Require;

/** Addresses and coordinates as the services want them, whatever the PC's language. */
public final class Addresses {

    private Addresses() {}

    /** Refuses plain http to anything but this machine. */
    static void requireSafe(String what, URI address) {
        boolean https = "https".equalsIgnoreCase(address.getScheme());
        boolean loopback =
                "http".equalsIgnoreCase(address.getScheme()) && isLoopback(address.getHost());
        Require.that(
                address.getHost() != null && (https || loopback),
                what
                        + ": address is "
                        + address
                        + ", must begin with https:// (plain http only on this machine)");
    }

    static boolean isLoopback(String host) {
        if (host == null) {
            return false;
        }
        String name = host.toLowerCase(Locale.ROOT);
        return name.equals("localhost")
                || name.matches("127(\\.\\d{1,3}){3}")
                || name.equals("::1")
                || name.equals("[::1]");
    }

    /** Base address with a path below it. */
    public static HttpUrl.Builder under(URI base, String path) {
        HttpUrl root = HttpUrl.get(base.toString());
        return root.newBuilder().addPathSegments(path);
    }

    /** Degrees with at most {@code places} decimals, no trailing zeros, no exponent, no comma. */
    public static String degrees(double value, int places) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** Latitude, comma, longitude, each with at most four decimals. */
    public static String latLon(GeoPoint point) {
        return degrees(point.latitudeDeg(), 4) + "," + degrees(point.longitudeDeg(), 4);
    }

    /**
     * The place to two decimals, about a kilometre: nearby fields share one question, and services
     * are spared more digits than their grids have.
     */
    public static GeoPoint shared(GeoPoint point) {
        return new GeoPoint(
                Double.parseDouble(degrees(point.latitudeDeg(), 2)),
                Double.parseDouble(degrees(point.longitudeDeg(), 2)));
    }

    /** The address without any key, for records and logs. */
    public static String withoutKey(HttpUrl url) {
        return url.newBuilder().removeAllQueryParameters("apikey").build().toString();
    }

    /** Host and port, the thing that is paused. */
    public static String hostOf(HttpUrl url) {
        return url.host() + ":" + url.port();
    }
}
