package rainward.input.seeder;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rainward.farm.Require;
import rainward.input.Gap;

/**
 * The setting to begin with, before the catch test proves it.
 *
 * @param settingIndex on the seeder's own scale
 * @param sureness how much it can be trusted
 * @param from what it rests on
 */
public record StartingSetting(double settingIndex, Sureness sureness, SettingRecord from) {

    // Common practice, no source: seeds within a factor of 1.5 in weight meter alike.
    private static final double ALIKE = Math.log(1.5);

    // Common practice, no source: a setting is carried over to twice or half the rate at most.
    private static final double FAR = Math.log(2);

    /** How much a setting can be trusted. */
    public enum Sureness {
        /** This mix was measured in this seeder; a catch test proves it. */
        SAME_MIX("measured with this mix; prove it with a catch test"),
        /** A mix with seed of nearly this size was measured. */
        LIKE_SEED("from a mix with seed of nearly this size; catch before the first field"),
        /** Twice the opening does not give twice the seed. */
        FAR_RATE("from a rate far from this one; catch, correct and catch again"),
        /** Chart and truth may be 25 to 50 % apart (Mississippi State University P3112). */
        FAR_SEED("from seed of another size, may be half off; catch, correct and catch again");

        private final String words;

        Sureness(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * The latest record of this mix, else of the mix whose largest seed is nearest in weight. The
     * setting is scaled with the rate, between two records of the same mix along the line through
     * them.
     *
     * @param seeder its name
     * @param seed what goes in
     * @param targetKgPerHa out of the bag [kg/ha]
     * @param records of any seeder and mix
     * @return empty where this seeder has none
     */
    public static Optional<StartingSetting> of(
            String seeder, SeedSize seed, double targetKgPerHa, List<SettingRecord> records) {
        Require.positive("targetKgPerHa", targetKgPerHa);
        return records.stream()
                .filter(record -> record.seeder().equals(seeder))
                .min(Comparator.<SettingRecord>comparingInt(
                                r -> r.seed().mix().equals(seed.mix()) ? 0 : 1)
                        .thenComparingDouble(r -> r.seed().apart(seed))
                        .thenComparingDouble(
                                r -> Math.abs(Math.log(r.rateKgPerHa() / targetKgPerHa)))
                        .thenComparing(SettingRecord::at, Comparator.reverseOrder()))
                .map(nearest -> from(nearest, seed, targetKgPerHa, records));
    }

    /** What to say where {@link #of} finds nothing. */
    public static Gap gap(String seeder, SeedSize seed) {
        return new Gap(
                seeder,
                "no setting on record for " + seed.mix() + " or any other mix",
                "start from the maker's chart, catch, and record what came out");
    }

    private static StartingSetting from(
            SettingRecord nearest, SeedSize seed, double targetKgPerHa, List<SettingRecord> all) {
        double settingIndex = acrossTarget(nearest, targetKgPerHa, all)
                .map(other -> between(nearest, other, targetKgPerHa))
                .orElse(nearest.settingIndex() * targetKgPerHa / nearest.rateKgPerHa());
        return new StartingSetting(settingIndex, sureness(nearest, seed, targetKgPerHa), nearest);
    }

    private static Sureness sureness(SettingRecord nearest, SeedSize seed, double targetKgPerHa) {
        boolean same = nearest.seed().mix().equals(seed.mix());
        if (!same && nearest.seed().apart(seed) > ALIKE) {
            return Sureness.FAR_SEED;
        }
        if (Math.abs(Math.log(nearest.rateKgPerHa() / targetKgPerHa)) > FAR) {
            return Sureness.FAR_RATE;
        }
        return same ? Sureness.SAME_MIX : Sureness.LIKE_SEED;
    }

    /** The nearest record of the same seeder and mix on the other side of the target. */
    private static Optional<SettingRecord> acrossTarget(
            SettingRecord nearest, double targetKgPerHa, List<SettingRecord> all) {
        return all.stream()
                .filter(other -> other.seeder().equals(nearest.seeder()))
                .filter(other -> other.seed().mix().equals(nearest.seed().mix()))
                .filter(other -> (other.rateKgPerHa() - targetKgPerHa)
                                * (nearest.rateKgPerHa() - targetKgPerHa)
                        < 0)
                .filter(other -> (other.rateKgPerHa() - nearest.rateKgPerHa())
                                * (other.settingIndex() - nearest.settingIndex())
                        > 0)
                .min(Comparator.comparingDouble(
                        other -> Math.abs(other.rateKgPerHa() - targetKgPerHa)));
    }

    private static double between(SettingRecord one, SettingRecord other, double targetKgPerHa) {
        double share =
                (targetKgPerHa - one.rateKgPerHa()) / (other.rateKgPerHa() - one.rateKgPerHa());
        return one.settingIndex() + share * (other.settingIndex() - one.settingIndex());
    }
}
