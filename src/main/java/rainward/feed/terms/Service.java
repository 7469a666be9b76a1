package rainward.feed.terms;

import java.time.Duration;

/** The public services that are asked, each with the manners it asks for. */
public enum Service {
    NWS("nws", "https://api.weather.gov", Manners.of(4, 10, 1)),
    /** Alerts of the same host; their trouble is not the forecast's. */
    NWS_ALERTS("nws-alerts", "https://api.weather.gov", Manners.of(4, 2, 1)),
    NWS_STATIONS("nws-stations", "https://api.weather.gov", Manners.of(2, 15, 1)),
    MET_NORWAY("met-norway", "https://api.met.no", Manners.of(2, 30, 60)),
    OPEN_METEO("open-meteo", "https://api.open-meteo.com", Manners.of(2, 60, 60)),
    OPEN_METEO_ENSEMBLE(
            "open-meteo-ensemble", "https://ensemble-api.open-meteo.com", Manners.of(16, 60, 60)),
    STAGE4("stage4", "https://mesonet.agron.iastate.edu", Manners.of(2, 60, 5)),
    ACIS("acis", "https://data.rcc-acis.org", Manners.of(2, 60, 5)),
    SOIL_SURVEY("soil-survey", "https://sdmdataaccess.sc.egov.usda.gov", Manners.of(2, 60, 15)),
    SOIL_GRIDS("soil-grids", "https://rest.isric.org", Manners.of(2, 60, 15));

    private final String code;
    private final String address;
    private final Manners manners;

    Service(String code, String address, Manners manners) {
        this.code = code;
        this.address = address;
        this.manners = manners;
    }

    /** Short name, as in records and settings. */
    public String code() {
        return code;
    }

    /** Base address where the settings give no other. */
    public String usualAddress() {
        return address;
    }

    public Manners manners() {
        return manners;
    }

    /**
     * What a service asks of those who use it, where its answers do not say it themselves.
     *
     * @param capBytes longest decoded answer that is read [bytes]
     * @param leastAge an answer younger than this is not asked for again, whatever its headers say
     * @param throttlePause shortest pause after it said "too many requests"
     */
    public record Manners(long capBytes, Duration leastAge, Duration throttlePause) {

        static Manners of(int capMb, int leastAgeMinutes, int throttleMinutes) {
            return new Manners(
                    capMb * 1_048_576L,
                    Duration.ofMinutes(leastAgeMinutes),
                    Duration.ofMinutes(throttleMinutes));
        }
    }
}
