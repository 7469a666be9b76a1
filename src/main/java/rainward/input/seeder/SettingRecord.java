package rainward.input.seeder;

import java.time.Instant;
import rainward.farm.Require;

/**
 * A setting and what really came out.
 *
 * @param seeder its name
 * @param seed what was in it
 * @param at when it was measured
 * @param settingIndex number on the seeder's own scale, above 0
 * @param rateKgPerHa that came out [kg/ha]
 */
public record SettingRecord(
        String seeder, SeedSize seed, Instant at, double settingIndex, double rateKgPerHa) {

    public SettingRecord {
        Require.named("seeder", seeder);
        Require.positive("settingIndex", settingIndex);
        Require.positive("rateKgPerHa", rateKgPerHa);
    }
}
