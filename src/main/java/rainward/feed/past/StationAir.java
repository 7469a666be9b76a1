package rainward.feed.past;

import java.time.Instant;
import rainward.farm.Require;

/**
 * Air of one hour as a station saw it; only hours of which all three are known.
 *
 * @param hour full hour that holds the report, UTC
 * @param airTempC at screen height [C]
 * @param dewPointC at screen height [C]
 * @param windMps at 2 m [m/s]
 */
public record StationAir(Instant hour, double airTempC, double dewPointC, double windMps) {

    public StationAir {
        Require.inRange("airTempC", airTempC, -60, 60);
        Require.inRange("dewPointC", dewPointC, -80, 40);
        Require.inRange("windMps", windMps, 0, 100);
    }
}
