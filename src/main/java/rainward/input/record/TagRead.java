package rainward.input.record;

import java.time.LocalDate;
import rainward.farm.Require;
import rainward.input.seed.SeedTag;

/**
 * A seed tag that somebody has read.
 *
 * @param species in the bag
 * @param tag what it says
 * @param testedOn month of the germination test, any day of it
 */
public record TagRead(String species, SeedTag tag, LocalDate testedOn) {

    /** Federal Seed Act regulations, 7 CFR 201: a test holds 5 months in trade; from memory. */
    public static final int TEST_HOLDS_MONTHS = 5;

    public TagRead {
        Require.named("species", species);
    }

    /** True where the seed should be tested again before a rate is built on the tag. */
    public boolean isOld(LocalDate today) {
        return today.isAfter(testedOn.plusMonths(TEST_HOLDS_MONTHS + 1L));
    }
}
