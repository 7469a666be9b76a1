package rainward.input.seed;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import rainward.farm.MixComponent;
import rainward.input.Gap;

/**
 * Seed that one field takes. Without a tag the live seed is known and the weight out of the bag is
 * not: that is a gap, not a guess.
 *
 * @param sowing what is sown where
 * @param parts one a component, in the order of the mix
 */
public record SeedNeed(Sowing sowing, List<Part> parts) {

    public SeedNeed {
        parts = List.copyOf(parts);
    }

    /**
     * Rate x area for each component, divided by the pure live seed of its tag.
     *
     * @param tags by species; one that is missing makes a gap
     */
    public static SeedNeed of(Sowing sowing, Map<String, SeedTag> tags) {
        return new SeedNeed(
                sowing,
                sowing.mix().components().stream()
                        .map(component -> part(sowing, component, tags))
                        .toList());
    }

    private static Part part(Sowing sowing, MixComponent component, Map<String, SeedTag> tags) {
        String species = component.species().name();
        double liveKg = component.rateKgPerHa(sowing.method()) * sowing.areaHa();
        OptionalDouble bulkKg = Optional.ofNullable(tags.get(species)).stream()
                .mapToDouble(tag -> tag.bulkKg(liveKg))
                .findFirst();
        return new Part(species, liveKg, bulkKg);
    }

    public double liveKg() {
        return parts.stream().mapToDouble(Part::liveKg).sum();
    }

    /** Seed out of the bags, all components; empty as long as a tag is missing [kg]. */
    public OptionalDouble bulkKg() {
        return parts.stream().anyMatch(part -> part.bulkKg().isEmpty())
                ? OptionalDouble.empty()
                : OptionalDouble.of(bulkOfParts().sum());
    }

    /**
     * Rate that the seeder is set to, out of the bag [kg/ha]; empty as long as a tag is missing.
     */
    public OptionalDouble bulkRateKgPerHa() {
        return bulkKg().stream().map(kg -> kg / sowing.areaHa()).findFirst();
    }

    /** Share of each component by weight in the box, in the order of the parts. */
    public List<Double> boxShares() {
        double allKg = bulkOfParts().sum();
        return bulkKg().isEmpty()
                ? List.of()
                : parts.stream().map(p -> p.bulkKg().orElse(0) / allKg).toList();
    }

    private DoubleStream bulkOfParts() {
        return parts.stream().flatMapToDouble(part -> part.bulkKg().stream());
    }

    public List<Gap> gaps() {
        return parts.stream().flatMap(Part::gap).toList();
    }

    /**
     * One component on one field.
     *
     * @param species its name
     * @param liveKg pure live seed [kg]
     * @param bulkKg seed out of the bag; empty without a tag [kg]
     */
    public record Part(String species, double liveKg, OptionalDouble bulkKg) {

        Stream<Gap> gap() {
            return bulkKg.isPresent()
                    ? Stream.empty()
                    : Stream.of(new Gap(
                            species,
                            "no seed tag, so weight out of the bag is not known",
                            "read purity, germination and coating from the tag, or have"
                                    + " the seed tested"));
        }
    }
}
