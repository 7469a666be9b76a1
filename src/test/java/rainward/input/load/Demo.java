package rainward.input.load;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.farm.Crew;
import rainward.farm.CrewHours;
import rainward.farm.DayClock;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
import rainward.farm.Mix;
import rainward.farm.Operation;
import rainward.farm.Property;
import rainward.farm.Recipe;
import rainward.farm.Roster;
import rainward.farm.SeedingMethod;
import rainward.farm.SoilTexture;
import rainward.farm.Stage;
import rainward.farm.StageLimits;
import rainward.farm.UnitSystem;
import rainward.farm.Window;
import rainward.input.Mixes;
import rainward.input.Us;
import rainward.input.seed.BulkDensity;
import rainward.input.seed.SeedBoxes;
import rainward.input.seed.SeedLot;
import rainward.input.seed.SeedTag;
import rainward.input.seeder.SeedSize;
import rainward.input.seeder.SettingRecord;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;

/** An invented crew's Tuesday: lime at two fields, turnip and rape in two, oats on Wednesday. */
final class Demo {
    static final ZoneId ZONE = ZoneId.of("America/Detroit");
    static final LocalDate TUESDAY = LocalDate.of(2026, 7, 14);
    static final Mix BRASSICAS = Mixes.mix(
            "turnip and rape",
            Mixes.part("turnip", 485_000, Us.kgPerHa(2)),
            Mixes.part("rape", 346_000, Us.kgPerHa(4)));
    static final Mix OATS = Mixes.mix("oats", Mixes.part("oats", 35_000, Us.kgPerHa(90)));
    private static final GeoPoint BARN = new GeoPoint(42.0, -84.4);

    private Demo() {}

    static Field field(String name, double acres) {
        return new Field(
                name,
                "Old Mill",
                BARN,
                Us.ha(acres),
                new Field.Ground(new SoilTexture(0.4, 0.2, 2.5), 0.02),
                new Field.Wish(List.of("turnip and rape"), "brassica", 1));
    }

    static Roster roster() {
        Stage spread = new Stage(
                "lime", Operation.SPREAD, Duration.ZERO, Optional.empty(), StageLimits.SOIL_ONLY);
        Stage seed = new Stage(
                "seed",
                Operation.SEED,
                Duration.ZERO,
                Optional.empty(),
                StageLimits.seedingBy(SeedingMethod.ROLLED));
        return Roster.of(
                List.of(new Property("Old Mill", BARN)),
                List.of(BRASSICAS, OATS),
                List.of(new Recipe("brassica", List.of(spread, seed))),
                new Crew(
                        new DayClock(ZONE, UnitSystem.METRIC), hours(), List.of(), List.of(), 1.3));
    }

    private static CrewHours hours() {
        return new CrewHours(
                LocalTime.of(6, 0),
                LocalTime.of(20, 0),
                Duration.ZERO,
                EnumSet.allOf(DayOfWeek.class),
                false);
    }

    static PlanItem item(
            String field, Operation operation, LocalDate day, LocalTime at, Optional<String> mix) {
        Instant from = day.atTime(at).atZone(ZONE).toInstant();
        boolean seeding = operation == Operation.SEED;
        return new PlanItem(
                1,
                new PlanItem.Place(field, "Old Mill", seeding ? "seed" : "lime", operation),
                new PlanItem.Hands(seeding ? "roller seeder" : "spreader", "Ida"),
                new Window(from, from.plusSeconds(5_400)),
                0.2,
                mix.map(name -> new PlanItem.Sowing(name, 0.7, 0.6)));
    }

    static Plan plan() {
        return new Plan(
                TUESDAY.atTime(5, 0).atZone(ZONE).toInstant(),
                List.of(
                        item(
                                "Mill 1",
                                Operation.SPREAD,
                                TUESDAY,
                                LocalTime.of(7, 0),
                                Optional.empty()),
                        item(
                                "Mill 1",
                                Operation.SEED,
                                TUESDAY,
                                LocalTime.of(9, 0),
                                mix("turnip and rape")),
                        item(
                                "Mill 2",
                                Operation.SPREAD,
                                TUESDAY,
                                LocalTime.of(9, 30),
                                Optional.empty()),
                        item(
                                "Mill 2",
                                Operation.SEED,
                                TUESDAY,
                                LocalTime.of(23, 30),
                                mix("turnip and rape")),
                        item(
                                "Mill 3",
                                Operation.SEED,
                                TUESDAY.plusDays(1),
                                LocalTime.of(0, 30),
                                mix("oats"))),
                List.of(),
                new Plan.Value(0, 0, 0, 0, 0));
    }

    static Optional<String> mix(String name) {
        return Optional.of(name);
    }

    static Supplies supplies() {
        return new Supplies(
                roster(),
                Map.of(
                        "Mill 1", field("Mill 1", 4),
                        "Mill 2", field("Mill 2", 6),
                        "Mill 3", field("Mill 3", 5)),
                Map.of(
                        "turnip", lot("turnip", 1, 1.5, 0.9),
                        "rape", lot("rape", 1, 0, 0.8),
                        "oats", new SeedLot("oats", Optional.empty(), Us.kg(50), 12, 0)),
                Map.of("Mill 1", List.of(new Supplies.Spread("ag lime", Us.kgPerHa(4_000), false))),
                gear());
    }

    private static SeedLot lot(String species, int bags, double openedLb, double pure) {
        return new SeedLot(
                species,
                Optional.of(SeedTag.bare("A1", 1, pure)),
                Us.kg(25),
                bags,
                Us.kg(openedLb));
    }

    static Supplies.Gear gear() {
        SeedBoxes boxes =
                new SeedBoxes(List.of(new SeedBoxes.Box(1.8, 18), new SeedBoxes.Box(1.8, 18)), 0.1);
        return new Supplies.Gear(
                Map.of("roller seeder", boxes),
                Map.of("spreader", new Supplies.Spreader(Us.kg(6_000), Optional.empty())),
                new BulkDensity(Map.of("turnip", 640.0, "rape", 640.0)),
                List.of(new SettingRecord(
                        "roller seeder",
                        SeedSize.of(BRASSICAS),
                        Instant.parse("2025-07-20T15:00:00Z"),
                        18,
                        Us.kgPerHa(6))));
    }
}
