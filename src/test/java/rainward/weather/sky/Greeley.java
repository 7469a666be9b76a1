package rainward.weather.sky;

import rainward.farm.GeoPoint;

/** Station of ASCE-EWRI 2005 appendix C; the only published hour-by-hour example. */
final class Greeley {

    static final GeoPoint PLACE = new GeoPoint(Math.toDegrees(0.7053), -105);
    static final double ELEVATION_M = 1462.4;

    private Greeley() {}
}
