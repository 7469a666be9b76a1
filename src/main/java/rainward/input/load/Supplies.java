package rainward.input.load;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
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

    /** What goes over a field in each pass: what is blended together, all else alone. */
    List<List<Spread>> passes(String field) {
        List<Spread> all = spreads.getOrDefault(field, List.of());
        Stream<List<Spread>> alone =
                all.stream().filter(spread -> !spread.blended()).map(List::of);
        List<Spread> blend = all.stream().filter(Spread::blended).toList();
        return Stream.concat(alone, Stream.of(blend).filter(pass -> !pass.isEmpty()))
                .toList();
    }

    Optional<Field> field(String name) {
        return Optional.ofNullable(fields.get(name));
    }

    /**
     * A product to be spread on a field.
     *
     * @param product its name
     * @param rateKgPerHa as spread [kg/ha]
     * @param blended true where it goes out in one pass with the others of the field's blend
     */
    public record Spread(String product, double rateKgPerHa, boolean blended) {

        public Spread {
            Require.named("product", product);
            Require.positive("rateKgPerHa", rateKgPerHa);
        }
    }

    /**
     * How a spreader carries.
     *
     * @param loadKg a full load [kg]
     * @param loadsAt where it is filled; empty: at the field
     */
    public record Spreader(double loadKg, Optional<GeoPoint> loadsAt) {

        public Spreader {
            Require.positive("loadKg", loadKg);
        }
    }

    /**
     * Machines as they carry and meter.
     *
     * @param boxes seed boxes, by seeder
     * @param spreaders how spreaders carry, by machine
     * @param density of seed in bulk
     * @param settings tried before
     */
    public record Gear(
            Map<String, SeedBoxes> boxes,
            Map<String, Spreader> spreaders,
            BulkDensity density,
            List<SettingRecord> settings) {

        public Gear {
            boxes = Map.copyOf(boxes);
            spreaders = Map.copyOf(spreaders);
            settings = List.copyOf(settings);
        }
    }
}
