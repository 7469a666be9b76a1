package rainward.weather.rain;

/** Where the rain of a past day comes from; what stands first outranks what follows. */
public enum RainOrigin {
    /** The farm's own gauge. */
    GAUGE,
    /** An analysis or a station by the hour. */
    HOURLY_ANALYSIS,
    /** An analysis or a station by the day. */
    DAILY_ANALYSIS,
    /** What had been forecast for those hours. */
    FORECAST,
    /** Nobody knows: the month's usual rain. */
    CLIMATE;

    /** Short name of the farm's own gauge as a source. */
    public static final String GAUGE_SOURCE = "gauge";

    /** Longest window that still counts as rain by the hour [h]. */
    private static final double HOURLY_UP_TO_H = 3;

    /** How an observation ranks, by its source and the length of its window. */
    public static RainOrigin of(RainObservation observation) {
        if (observation.source().equals(GAUGE_SOURCE)) {
            return GAUGE;
        }
        double hours = observation.window().length().toMinutes() / 60.0;
        return hours <= HOURLY_UP_TO_H ? HOURLY_ANALYSIS : DAILY_ANALYSIS;
    }

    /** True where somebody measured. */
    public boolean observed() {
        return compareTo(FORECAST) < 0;
    }
}
