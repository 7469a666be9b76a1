package rainward.weather.source;

import java.time.Instant;
import rainward.farm.GeoPoint;

/** The one door to a forecast: a public service, or a chain of them. */
public interface ForecastSource {

    /** Short name of the service, for instance {@code nws}. */
    String name();

    /**
     * Asks for the forecast at a point; answers from the kept copy, without a request, where the
     * service's own expiry says that nothing newer can be there.
     *
     * @param point where
     * @param asOf now; hours before it are clipped
     * @return what came of it, with every answer as received; never throws because the world is bad
     */
    Pull pull(GeoPoint point, Instant asOf);
}
