package rainward.farm;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;

/**
 * A place on the WGS84 ellipsoid, degrees north and east.
 *
 * @param latitudeDeg geodetic latitude, -90 to 90 [deg]
 * @param longitudeDeg longitude, -180 to 180, east positive [deg]
 */
public record GeoPoint(double latitudeDeg, double longitudeDeg) {

    public GeoPoint {
        Require.inRange("latitudeDeg", latitudeDeg, -90, 90);
        Require.inRange("longitudeDeg", longitudeDeg, -180, 180);
    }

    /**
     * Length of the geodesic to another place; exact on the ellipsoid (Karney 2013).
     *
     * @param other the other end
     * @return distance over ground, as the crow flies [km]
     */
    public double distanceKm(GeoPoint other) {
        return Geodesic.WGS84.Inverse(
                                latitudeDeg,
                                longitudeDeg,
                                other.latitudeDeg,
                                other.longitudeDeg,
                                GeodesicMask.DISTANCE)
                        .s12
                / 1000;
    }
}
