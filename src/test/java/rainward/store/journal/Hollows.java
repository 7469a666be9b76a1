package rainward.store.journal;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rainward.farm.DayClock;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
import rainward.farm.MappedField;
import rainward.farm.Operation;
import rainward.farm.Property;
import rainward.farm.Recipe;
import rainward.farm.SeedingMethod;
import rainward.farm.SoilTexture;
import rainward.farm.Stage;
import rainward.farm.StageLimits;
import rainward.farm.Survey;
import rainward.farm.UnitSystem;

/** Two invented fields on one invented property, with a recipe of four stages. */
public final class Hollows {

    public static final ZoneId ZONE = ZoneId.of("America/Detroit");

    public static final Instant JULY = Instant.parse("2026-07-14T11:00:00Z");

    public static final Property PROPERTY =
            new Property("Kettle Hollow", new GeoPoint(42.1, -84.4));

    public static final Field NORTH = field("North Hollow", 4.25);

    public static final Field SOUTH = field("South Hollow", 1.5);

    public static final Recipe RECIPE = new Recipe(
            "mow, disk, seed, firm",
            List.of(
                    stage("mow", Operation.MOW, StageLimits.SOIL_ONLY),
                    stage("disk", Operation.DISK, StageLimits.SOIL_ONLY),
                    stage("seed", Operation.SEED, StageLimits.seedingBy(SeedingMethod.ROLLED)),
                    stage("firm", Operation.FIRM, StageLimits.SOIL_ONLY)));

    public static final Survey SURVEY = new Survey(
            List.of(PROPERTY),
            List.of(),
            List.of(
                    new MappedField(NORTH, Optional.of("{\"type\":\"Polygon\"}")),
                    new MappedField(SOUTH, Optional.empty())));

    private Hollows() {}

    public static Field field(String name, double areaHa) {
        return new Field(
                name,
                PROPERTY.name(),
                new GeoPoint(42.11, -84.41),
                areaHa,
                new Field.Ground(new SoilTexture(0.6, 0.1, 2.5), 0.04),
                new Field.Wish(List.of("clover and chicory", "rye"), "mow, disk, seed, firm", 1.5));
    }

    private static Stage stage(String name, Operation operation, StageLimits limits) {
        return new Stage(name, operation, Duration.ZERO, Optional.empty(), limits);
    }

    /** A word about a stage of the north field, said an hour after it happened. */
    public static StageWord word(String stage, String localTime, String... passingOver) {
        ZonedDateTime at =
                ZonedDateTime.parse("2026-07-14T" + localTime + "-04:00[America/Detroit]");
        return new StageWord(
                NORTH.name(),
                stage,
                new StageWord.Said(
                        at.toInstant(),
                        at.plusHours(1).toInstant(),
                        "foreman",
                        new DayClock(ZONE, UnitSystem.US_CUSTOMARY)),
                new StageWord.Means(Optional.empty(), Optional.empty(), Set.of(passingOver)));
    }
}
