package rainward.weather.source;

import java.util.Optional;

/** What has to stand beside weather of a source, by the terms of its licence. */
public final class Credits {

    private Credits() {}

    /** Attribution for a source by its short name; empty where none is asked for. */
    public static Optional<String> of(String source) {
        return switch (source) {
            case "met-norway" -> Optional.of("Weather data from MET Norway, CC BY 4.0");
            case "open-meteo", "open-meteo-ensemble" ->
                Optional.of("Weather data by Open-Meteo.com, CC BY 4.0");
            case "soil-grids" -> Optional.of("Soil data from ISRIC SoilGrids, CC BY 4.0");
            case "nws" -> Optional.of("Forecast by the US National Weather Service");
            case "stage4" ->
                Optional.of("Rain analysis by the US National Weather Service (Stage IV),"
                        + " served by the Iowa Environmental Mesonet");
            default -> Optional.empty();
        };
    }
}
