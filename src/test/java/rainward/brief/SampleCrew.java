package rainward.brief;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalTime;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import rainward.farm.Crew;
import rainward.farm.CrewHours;
import rainward.farm.DayClock;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
import rainward.farm.Property;
import rainward.farm.Roster;
import rainward.farm.SoilTexture;
import rainward.farm.UnitSystem;

/** The invented crew in southern Michigan whose days the tests write briefs for. */
public final class SampleCrew {

    public static final ZoneId DETROIT = ZoneId.of("America/Detroit");

    public static final String FARM = "Long Lake Seeding";

    public static final String WANTED = "three brassicas";

    public static final String FALL_BACK = "rye and clover";

    public static final MonthDay LAST_SOWING = MonthDay.of(8, 15);

    public static final List<Property> PROPERTIES = List.of(
            new Property("Kettle Lake", new GeoPoint(42.10, -84.30)),
            new Property("Mill Pond", new GeoPoint(42.02, -84.55)),
            new Property("Otter Creek", new GeoPoint(41.93, -84.12)),
            new Property("Stone Church", new GeoPoint(42.21, -84.41)));

    public static final List<Field> FIELDS = List.of(
            field("Kettle 1", "Kettle Lake", 4.2, 0.02),
            field("Kettle 2", "Kettle Lake", 2.6, 0.14),
            field("Mill 3", "Mill Pond", 6.1, 0.01),
            field("Mill 5", "Mill Pond", 1.8, 0.03),
            field("Otter Flat", "Otter Creek", 8.4, 0.01),
            field("Otter Knoll", "Otter Creek", 3.3, 0.18),
            field("Church East", "Stone Church", 2.2, 0.04),
            field("Church West", "Stone Church", 5.0, 0.03));

    private SampleCrew() {}

    private static Field field(String name, String property, double acres, double slopeFraction) {
        return new Field(
                name,
                property,
                PROPERTIES.stream()
                        .filter(p -> p.name().equals(property))
                        .findFirst()
                        .map(Property::place)
                        .orElseThrow(),
                acres * 0.404_685_642_24,
                new Field.Ground(new SoilTexture(0.62, 0.12, 2.4), slopeFraction),
                new Field.Wish(List.of(WANTED, FALL_BACK), "till and seed", 1));
    }

    public static Roster roster() {
        return Roster.of(PROPERTIES, List.of(), List.of(), crew());
    }

    private static Crew crew() {
        return new Crew(
                new DayClock(DETROIT, UnitSystem.US_CUSTOMARY),
                new CrewHours(
                        LocalTime.of(6, 30),
                        LocalTime.of(18, 0),
                        Duration.ofHours(2),
                        EnumSet.complementOf(EnumSet.of(DayOfWeek.SUNDAY)),
                        true),
                List.of(),
                List.of(),
                1.3);
    }

    public static Set<String> propertyNames() {
        return Set.copyOf(PROPERTIES.stream().map(Property::name).toList());
    }
}
