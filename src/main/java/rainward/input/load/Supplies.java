package rainward.input.load;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import rainward.farm.Field;
import rainward.farm.Require;
import rainward.farm.Roster;
import rainward.input.seed.BulkDensity;
import rainward.input.seed.SeedBoxes;
import rainward.input.seed.SeedLot;
import rainward.input.seed.SeedTag;
import rainward.input.seeder.SettingRecord;

/**
 * All that a load sheet needs beside the plan.
 *
 * @param roster mixes, recipes, crew
 * @param fields by name
 * @param seed in the shed, by species
 * @param spreads lime and fertilizer to be spread, by field
 * @param gear how machines are built and were set
 */
public record Supplies(
        Roster roster,
        Map<String, Field> fields,
        Map<String, SeedLot> seed,
        Map<String, List<Spread>> spreads,
        Gear gear) {

    public Supplies {
        fields = Map.copyOf(fields);
        seed = Map.copyOf(seed);
        spreads = Map.copyOf(spreads);
    }

    /** Tags that somebody has read, by species. */
    public Map<String, SeedTag> tags() {
        return seed.values().stream()
                .filter(lot -> lot.tag().isPresent())
                .collect(Collectors.toMap(SeedLot::species, lot -> lot.tag().orElseThrow()));
    }

    Optional<Field> field(String name) {
        return Optional.ofNullable(fields.get(name));
    }

    /**
     * A product to be spread on a field.
     *
     * @param product its name
     * @param rateKgPerHa as spread [kg/ha]
     */
    public record Spread(String product, double rateKgPerHa) {

        public Spread {
            Require.named("product", product);
            Require.positive("rateKgPerHa", rateKgPerHa);
        }
    }

    /**
     * Machines as they carry and meter.
     *
     * @param boxes seed boxes, by seeder
     * @param spreaderKg most that a spreader carries, by machine [kg]
     * @param density of seed in bulk
     * @param settings tried before
     */
    public record Gear(
            Map<String, SeedBoxes> boxes,
            Map<String, Double> spreaderKg,
            BulkDensity density,
            List<SettingRecord> settings) {

        public Gear {
            boxes = Map.copyOf(boxes);
            spreaderKg = Map.copyOf(spreaderKg);
            spreaderKg.forEach((machine, mass) -> Require.positive(machine + " load in kg", mass));
            settings = List.copyOf(settings);
        }
    }
}
