package rainward.weather.rain;

/** Where the rain of a past day comes from; what stands first outranks what follows. */
public enum RainOrigin {
    /** The farm's own gauge. */
    GAUGE,
    /** An analysis by the hour. */
    HOURLY_ANALYSIS,
    /** An analysis by the day. */
    DAILY_ANALYSIS,
    /** A weather station near by, whose rain is mostly missing. */
    STATION,
    /** What had been forecast for those hours. */
    FORECAST,
    /** Nobody knows: the month's usual rain. */
    CLIMATE;

    /** Short name of the farm's own gauge as a source. */
    public static final String GAUGE_SOURCE = "gauge";

    /** Short name of a public weather station as a source. */
    public static final String STATION_SOURCE = "station";

    /** Longest window that still counts as rain by the hour [h]. */
    private static final double HOURLY_UP_TO_H = 3;

    /** How an observation ranks, by its source and the length of its window. */
    public static RainOrigin of(RainObservation observation) {
        if (observation.source().equals(GAUGE_SOURCE)) {
            return GAUGE;
        }
        if (observation.source().equals(STATION_SOURCE)) {
            return STATION;
        }
        double hours = observation.window().length().toMinutes() / 60.0;
        return hours <= HOURLY_UP_TO_H ? HOURLY_ANALYSIS : DAILY_ANALYSIS;
    }

    /** True where somebody measured. */
    public boolean observed() {
        return compareTo(FORECAST) < 0;
    }

    /** As a person would say it. */
    public String words() {
        return switch (this) {
            case GAUGE -> "gauge";
            case HOURLY_ANALYSIS -> "hourly analysis";
            case DAILY_ANALYSIS -> "daily analysis";
            case STATION -> "station";
            case FORECAST -> "what had been forecast";
            case CLIMATE -> "the month's usual rain";
        };
    }
}
