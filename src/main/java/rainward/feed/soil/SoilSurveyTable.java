package rainward.feed.soil;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import rainward.farm.SoilTexture;
import rainward.farm.SurveyedSoil;
import rainward.feed.reading.Json;
import rainward.feed.reading.Unreadable;
import rainward.feed.terms.Service;
import rainward.weather.source.LastGoodCopies.Copy;

/**
 * Reads a table of the US soil survey: names, then rows of text. Horizons are weighted by their
 * share of the top 30 cm, components by their share of the map unit, map units by their share of
 * the field where the answer tells it; those without texture (water, rock, made land) do not count.
 */
public final class SoilSurveyTable {

    private static final double TOP_CM = 30;
    private static final String MAP_SHARE = "map_share";

    /** Less of a field mapped, or more than all of it, and the answer is about something else. */
    private static final double LEAST_MAPPED = 0.5;

    private static final double MOST_MAPPED = 1.02;
    private static final double MOST_OM_PCT = 8;
    private static final double STEEPEST = 0.6;

    private final Map<String, Integer> columns;
    private final List<JsonNode> rows;

    private SoilSurveyTable(Map<String, Integer> columns, List<JsonNode> rows) {
        this.columns = columns;
        this.rows = rows;
    }

    public static SurveyedSoil read(Copy copy) throws Unreadable {
        JsonNode table = Json.read(copy.body()).path("Table");
        if (table.isMissingNode() || table.size() < 2) {
            throw new Unreadable("has no soil mapped at this place");
        }
        Map<String, Integer> columns = new LinkedHashMap<>();
        for (int i = 0; i < table.path(0).size(); i++) {
            columns.put(table.path(0).path(i).asText(""), i);
        }
        List<JsonNode> rows = new ArrayList<>();
        for (int i = 1; i < table.size(); i++) {
            rows.add(table.path(i));
        }
        return new SoilSurveyTable(columns, rows).soil(copy);
    }

    /** Map units of an answer about a whole field cover it, once. */
    private void requireWholeField() throws Unreadable {
        Map<String, Double> shares = new LinkedHashMap<>();
        for (JsonNode row : rows) {
            double share = Json.number(cell(row, MAP_SHARE)).orElse(Double.NaN);
            shares.put(text(row, "mukey"), share);
        }
        double mapped = shares.values().stream().mapToDouble(share -> share).sum();
        if (!(mapped >= LEAST_MAPPED && mapped <= MOST_MAPPED)) {
            throw new Unreadable(
                    "maps " + Math.round(100 * mapped) + " % of the field, which cannot be right");
        }
    }

    private SurveyedSoil soil(Copy copy) throws Unreadable {
        if (columns.containsKey(MAP_SHARE)) {
            requireWholeField();
        }
        Mean sand = new Mean();
        Mean clay = new Mean();
        Mean matter = new Mean();
        Mean slope = new Mean();
        List<String> names = new ArrayList<>();
        for (JsonNode row : rows) {
            double weight = weight(row);
            OptionalDouble sandPct = percent(row, "sandtotal_r");
            OptionalDouble clayPct = percent(row, "claytotal_r");
            if (weight <= 0 || sandPct.isEmpty() || clayPct.isEmpty()) {
                continue;
            }
            sand.add(sandPct, weight);
            clay.add(clayPct, weight);
            matter.add(percent(row, "om_r"), weight);
            slope.add(percent(row, "slope_r"), weight);
            String name = text(row, "compname") + " " + text(row, "comppct_r") + " %";
            if (!names.contains(name)) {
                names.add(name);
            }
        }
        if (names.isEmpty()) {
            throw new Unreadable("has no soil with a texture at this place");
        }
        double om = Math.min(MOST_OM_PCT, matter.value().orElse(0));
        OptionalDouble rise = slope.value();
        return new SurveyedSoil(
                texture(sand.value().orElse(0), clay.value().orElse(0), om),
                rise.isPresent()
                        ? OptionalDouble.of(Math.min(STEEPEST, rise.getAsDouble() / 100))
                        : rise,
                new SurveyedSoil.Origin(Service.SOIL_SURVEY.code(), copy.times().fetchedAt()),
                String.join(", ", names));
    }

    /** Rounding may bring sand and clay a little above the whole. */
    private static SoilTexture texture(double sandPct, double clayPct, double om) {
        double whole = Math.max(100, sandPct + clayPct);
        return new SoilTexture(sandPct / whole, clayPct / whole, om);
    }

    /** Centimetres of the top that a horizon fills, times its component's share. */
    private double weight(JsonNode row) {
        OptionalDouble share = percent(row, "comppct_r");
        OptionalDouble from = Json.number(cell(row, "hzdept_r"));
        OptionalDouble to = Json.number(cell(row, "hzdepb_r"));
        if (share.isEmpty() || from.isEmpty() || to.isEmpty()) {
            return 0;
        }
        double thickness = Math.min(TOP_CM, to.getAsDouble()) - Math.max(0, from.getAsDouble());
        double ofField = columns.containsKey(MAP_SHARE)
                ? Math.max(0, Json.number(cell(row, MAP_SHARE)).orElse(0))
                : 1;
        return Math.max(0, thickness) * share.getAsDouble() * ofField;
    }

    private OptionalDouble percent(JsonNode row, String name) {
        OptionalDouble value = Json.number(cell(row, name));
        boolean good = value.isPresent() && value.getAsDouble() >= 0 && value.getAsDouble() <= 100;
        return good ? value : OptionalDouble.empty();
    }

    private String text(JsonNode row, String name) {
        return Json.cut(cell(row, name).asText(""));
    }

    private JsonNode cell(JsonNode row, String name) {
        return row.path(columns.getOrDefault(name, -1));
    }
}
