package rainward.intake;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import rainward.farm.Mix;
import rainward.farm.MixComponent;
import rainward.farm.Season;
import rainward.farm.Species;

/** Species, seasons and mixes from the shared tables. */
public final class SharedTables {
    private static final List<String> SPECIES_COLUMNS = List.of(
            "species",
            "base_temp_c",
            "optimum_temp_c",
            "ceiling_temp_c",
            "lethal_temp_c",
            "hydrothermal_mpa_cd",
            "psi_base50_mpa",
            "psi_base_sigma_mpa",
            "germinable_fraction",
            "shoot_cd_per_cm",
            "root_cd_per_cm",
            "greatest_depth_cm",
            "seeds_per_kg",
            "source");
    private static final List<String> SEASON_COLUMNS = List.of(
            "season",
            "region",
            "first_sowing",
            "last_sowing",
            "full_worth_until",
            "last_emergence",
            "full_worth_fraction",
            "late_worth_fraction",
            "source");
    private static final List<String> MIX_COLUMNS =
            List.of("mix", "season", "sowing_depth_cm", "stand_target_fraction", "source");
    private static final List<String> COMPONENT_COLUMNS = List.of(
            "mix", "species", "drilled_kg_per_ha", "broadcast_kg_per_ha", "stand_weight", "source");

    private final TableFolder folder;

    public SharedTables(TableFolder folder) {
        this.folder = folder;
    }

    /** Species by name, in the order of the table. */
    public Map<String, Species> species() {
        return byName(
                folder.rows("species.csv", SPECIES_COLUMNS),
                row -> row.text("species"),
                row -> row.build(() -> species(row)));
    }

    /** Names of the regions that seasons are known for, in the order of the table. */
    public List<String> regions() {
        return folder.rows("seasons.csv", SEASON_COLUMNS).stream()
                .map(row -> row.text("region"))
                .distinct()
                .toList();
    }

    /**
     * Mixes by name, in the order of the table.
     *
     * @param region whose dates they take, for instance {@code southern michigan}
     */
    public Map<String, Mix> mixes(String region) {
        Map<String, Species> species = species();
        Map<String, Season> seasons = seasons(region);
        List<TableRow> components = folder.rows("mix-components.csv", COMPONENT_COLUMNS);
        Map<String, Mix> mixes = byName(
                folder.rows("mixes.csv", MIX_COLUMNS),
                row -> row.text("mix"),
                row -> row.build(() -> mix(row, seasons, componentsOf(row, components, species))));
        components.forEach(row -> known(row, "mix", mixes));
        return mixes;
    }

    private Map<String, Season> seasons(String region) {
        List<TableRow> rows = folder.rows("seasons.csv", SEASON_COLUMNS).stream()
                .filter(row -> row.text("region").equals(region))
                .toList();
        if (rows.isEmpty()) {
            throw new BadTableException(
                    "region '" + region + "' is not in seasons.csv, must be one of " + regions());
        }
        return byName(rows, row -> row.text("season"), row -> row.build(() -> season(row)));
    }

    private static Mix mix(
            TableRow row, Map<String, Season> seasons, List<MixComponent> components) {
        return new Mix(
                row.text("mix"),
                components,
                row.number("sowing_depth_cm"),
                row.number("stand_target_fraction"),
                known(row, "season", seasons));
    }

    private static List<MixComponent> componentsOf(
            TableRow mix, List<TableRow> components, Map<String, Species> species) {
        return components.stream()
                .filter(row -> row.text("mix").equals(mix.text("mix")))
                .map(row -> row.build(() -> component(row, species)))
                .toList();
    }

    private static MixComponent component(TableRow row, Map<String, Species> species) {
        return new MixComponent(
                known(row, "species", species),
                row.number("drilled_kg_per_ha"),
                row.number("broadcast_kg_per_ha"),
                row.number("stand_weight"));
    }

    private static Season season(TableRow row) {
        return new Season(
                row.day("first_sowing"),
                row.day("last_sowing"),
                row.day("full_worth_until"),
                row.day("last_emergence"),
                row.number("full_worth_fraction"),
                row.number("late_worth_fraction"));
    }

    private static Species species(TableRow row) {
        return new Species(
                row.text("species"),
                new Species.Cardinal(
                        row.number("base_temp_c"),
                        row.number("optimum_temp_c"),
                        row.number("ceiling_temp_c"),
                        row.number("lethal_temp_c")),
                row.number("hydrothermal_mpa_cd"),
                row.number("psi_base50_mpa"),
                row.number("psi_base_sigma_mpa"),
                row.number("germinable_fraction"),
                new Species.SeedlingGrowth(
                        row.number("shoot_cd_per_cm"),
                        row.number("root_cd_per_cm"),
                        row.number("greatest_depth_cm")),
                row.number("seeds_per_kg"));
    }

    private static <T> T known(TableRow row, String column, Map<String, T> all) {
        String name = row.text(column);
        return Optional.ofNullable(all.get(name))
                .orElseThrow(() ->
                        row.fault(column, "is '" + name + "'", "must be one of " + all.keySet()));
    }

    private static <T> Map<String, T> byName(
            List<TableRow> rows, Function<TableRow, String> name, Function<TableRow, T> build) {
        Map<String, T> all = new LinkedHashMap<>();
        for (TableRow row : rows) {
            if (all.put(name.apply(row), build.apply(row)) != null) {
                throw new BadTableException(
                        row.file() + " line " + row.line() + ": twice: " + name.apply(row));
            }
        }
        return all;
    }
}
