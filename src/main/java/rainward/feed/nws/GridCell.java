package rainward.feed.nws;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;
import rainward.feed.reading.Json;
import rainward.feed.reading.Unreadable;
import rainward.weather.source.LastGoodCopies.Copy;

/**
 * The grid cell of the US service that holds a place.
 *
 * @param office three or four letters
 * @param x column
 * @param y row
 * @param marine true over water, where there is no land forecast
 */
public record GridCell(String office, int x, int y, boolean marine) {

    /**
     * Reads the answer to a point.
     *
     * @return the cell; empty where the service says that there is none
     */
    public static Optional<GridCell> read(Copy copy) throws Unreadable {
        JsonNode root = Json.read(copy.body());
        JsonNode properties = root.has("properties") ? root.path("properties") : root;
        if (!properties.has("gridId")) {
            throw new Unreadable("sent an answer about a point that names no grid");
        }
        String office = properties.path("gridId").asText("");
        Optional<Integer> x = index(properties.path("gridX"));
        Optional<Integer> y = index(properties.path("gridY"));
        if (properties.path("gridId").isNull() || x.isEmpty() || y.isEmpty()) {
            return Optional.empty();
        }
        if (!office.matches("[A-Z0-9]{3,4}")) {
            throw new Unreadable("names a grid that cannot be: '" + Json.cut(office) + "'");
        }
        boolean marine = properties.path("type").asText("").equals("marine");
        return Optional.of(new GridCell(office, x.get(), y.get(), marine));
    }

    /** Path of the raw layers. */
    public String path() {
        return "gridpoints/" + office + "/" + x + "," + y;
    }

    private static Optional<Integer> index(JsonNode node) {
        String text = node.asText("").strip();
        return text.matches("\\d{1,5}") ? Optional.of(Integer.parseInt(text)) : Optional.empty();
    }
}
