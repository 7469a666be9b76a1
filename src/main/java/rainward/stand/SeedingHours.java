package rainward.stand;

import java.time.Instant;
import java.time.ZoneId;
import rainward.farm.Require;

/**
 * The hours in which seed could go in.
 *
 * @param start first of them, a full hour, UTC
 * @param count how many
 * @param zone of the farm's days, by which sowing and emergence are dated
 */
public record SeedingHours(Instant start, int count, ZoneId zone) {

    public SeedingHours {
        Require.that(start.getEpochSecond() % 3600 == 0, "seeding starts at " + start);
        Require.positive("count", count);
    }
}
