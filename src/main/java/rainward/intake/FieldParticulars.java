package rainward.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import rainward.farm.Field;
import rainward.farm.Quantity;
import rainward.farm.SoilTexture;
import rainward.farm.UnitSystem;

/**
 * What a line or feature says of a field beside where it lies.
 *
 * @param cells the line or feature
 * @param known what it may refer to
 */
record FieldParticulars(Particulars cells, KnownNames known) {

    private static final String UNKNOWN = "unknown";
    private static final String UNTIL_KNOWN = "loam";

    /** Columns that a list of fields may have. */
    static final Set<String> COLUMNS = Set.of(
            "name",
            "property",
            "latitude",
            "longitude",
            "acres",
            "hectares",
            "mix",
            "fallback_mixes",
            "texture",
            "sand_percent",
            "clay_percent",
            "organic_matter_percent",
            "slope_percent",
            "priority",
            "recipe",
            "gate_latitude",
            "gate_longitude");

    private static final double LARGEST_HA = 1000;

    /** Area as stated, if it is [ha]. */
    OptionalDouble statedHa() {
        if (cells.has("acres") && cells.has("hectares")) {
            cells.wrong("hectares", "give either acres or hectares");
            return OptionalDouble.empty();
        }
        OptionalDouble hectares = cells.number("hectares", 0.01, LARGEST_HA);
        OptionalDouble acres = cells.number(
                "acres", 0.02, Math.rint(UnitSystem.US_CUSTOMARY.shown(Quantity.AREA, LARGEST_HA)));
        return acres.isPresent()
                ? OptionalDouble.of(
                        UnitSystem.US_CUSTOMARY.inside(Quantity.AREA, acres.getAsDouble()))
                : hectares;
    }

    /** What the field is made of; a fault where the file does not tell. */
    Optional<Field.Ground> ground() {
        double slopeFraction =
                cells.number("slope_percent", 0, 60).orElse(known.usual().slopeFraction() * 100)
                        / 100;
        return texture().map(texture -> new Field.Ground(texture, slopeFraction));
    }

    private Optional<SoilTexture> texture() {
        boolean byClass = cells.has("texture");
        boolean byShares = cells.has("sand_percent") || cells.has("clay_percent");
        if (byClass == byShares) {
            cells.wrong(
                    "texture",
                    "give either a class (" + String.join(", ", known.textureNames())
                            + ") or sand_percent and clay_percent");
            return Optional.empty();
        }
        double organicPct = cells.number("organic_matter_percent", 0, 8)
                .orElse(known.usual().organicMatterPct());
        return byClass ? ofClass(organicPct) : ofShares(organicPct);
    }

    /** A class that nobody knows yet is loam until the soil survey is taken. */
    private Optional<SoilTexture> ofClass(double organicPct) {
        return cells.text("texture")
                .map(name -> name.equals(UNKNOWN) ? UNTIL_KNOWN : name)
                .flatMap(name -> cells.oneOf("texture", name, known.textureNames()))
                .flatMap(name -> Optional.ofNullable(known.textures().byName().get(name)))
                .map(middle ->
                        new SoilTexture(middle.sandFraction(), middle.clayFraction(), organicPct));
    }

    private Optional<SoilTexture> ofShares(double organicPct) {
        OptionalDouble sandPct = cells.required("sand_percent", 0, 100);
        OptionalDouble clayPct = cells.required("clay_percent", 0, 100);
        if (sandPct.isEmpty() || clayPct.isEmpty()) {
            return Optional.empty();
        }
        if (sandPct.getAsDouble() + clayPct.getAsDouble() > 100) {
            cells.wrong("clay_percent", "must not exceed 100 together with sand_percent");
            return Optional.empty();
        }
        return Optional.of(new SoilTexture(
                sandPct.getAsDouble() / 100, clayPct.getAsDouble() / 100, organicPct));
    }

    /** What the person wants there. */
    Optional<Field.Wish> wish() {
        List<String> mixes = mixes();
        Optional<String> recipe = recipe();
        double priority = cells.number("priority", 0.01, 100).orElse(1);
        return mixes.isEmpty()
                ? Optional.empty()
                : recipe.map(name -> new Field.Wish(mixes, name, priority));
    }

    private List<String> mixes() {
        if (!cells.has("mix")) {
            cells.wrong("mix", "must be one of " + String.join(", ", known.mixes()));
        }
        List<String> mixes = new ArrayList<>();
        cells.text("mix")
                .flatMap(name -> cells.oneOf("mix", name, known.mixes()))
                .ifPresent(mixes::add);
        for (String name : cells.list("fallback_mixes")) {
            cells.oneOf("fallback_mixes", name, known.mixes())
                    .filter(mix -> !mixes.contains(mix))
                    .ifPresent(mixes::add);
        }
        return mixes;
    }

    /** Where there is only one recipe, nobody needs to name it. */
    private Optional<String> recipe() {
        if (!cells.has("recipe") && known.recipes().size() == 1) {
            return known.recipes().stream().findFirst();
        }
        if (!cells.has("recipe")) {
            cells.wrong("recipe", "must be one of " + String.join(", ", known.recipes()));
        }
        return cells.text("recipe").flatMap(name -> cells.oneOf("recipe", name, known.recipes()));
    }
}
