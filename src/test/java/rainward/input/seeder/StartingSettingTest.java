package rainward.input.seeder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import rainward.input.Mixes;
import rainward.input.seeder.StartingSetting.Sureness;

/** The setting to begin with, by what was measured before. */
class StartingSettingTest {
    static final SeedSize BRASSICAS = SeedSize.of(Mixes.mix(
            "turnip and rape",
            Mixes.part("turnip", 485_000, 1.4),
            Mixes.part("rape", 346_000, 2.2)));
    static final SeedSize KALE = new SeedSize("kale", 309_000);
    static final SeedSize OATS = new SeedSize("oats", 35_000);

    private static SettingRecord record(SeedSize seed, int day, double settingIndex, double rate) {
        Instant at = Instant.parse("2026-07-01T12:00:00Z").plusSeconds(86_400L * day);
        return new SettingRecord("roller seeder", seed, at, settingIndex, rate);
    }

    private static StartingSetting start(SeedSize seed, double rate, SettingRecord... records) {
        return StartingSetting.of("roller seeder", seed, rate, List.of(records)).orElseThrow();
    }

    @Test
    void aMixIsMeteredOnItsLargestSeed() {
        assertThat(BRASSICAS.largestSeedsPerKg()).isEqualTo(346_000);
    }

    @Test
    void theSameMixScalesWithTheRate() {
        StartingSetting start = start(BRASSICAS, 6, record(BRASSICAS, 0, 20, 4));

        assertThat(start.settingIndex()).isCloseTo(30, within(1e-9));
        assertThat(start.sureness()).isEqualTo(Sureness.SAME_MIX);
    }

    @Test
    void betweenTwoRecordsTheLineThroughThemCounts() {
        StartingSetting start =
                start(BRASSICAS, 6, record(BRASSICAS, 0, 20, 4), record(BRASSICAS, 1, 24, 8));

        assertThat(start.settingIndex()).isCloseTo(22, within(1e-9));
    }

    @Test
    void twoRecordsThatContradictEachOtherAreNotJoinedByALine() {
        StartingSetting start =
                start(BRASSICAS, 6, record(BRASSICAS, 0, 20, 5), record(BRASSICAS, 1, 18, 8));

        assertThat(start.settingIndex()).isCloseTo(24, within(1e-9));
    }

    @Test
    void theLatestOfTwoEqualRatesIsTaken() {
        assertThat(start(BRASSICAS, 4, record(BRASSICAS, 0, 20, 4), record(BRASSICAS, 9, 23, 4))
                        .settingIndex())
                .isCloseTo(23, within(1e-9));
    }

    @Test
    void anotherMixOfLikeSeedIsASecondBest() {
        StartingSetting start =
                start(BRASSICAS, 4, record(KALE, 0, 18, 4), record(OATS, 0, 60, 90));

        assertThat(start.from().seed()).isEqualTo(KALE);
        assertThat(start.sureness()).isEqualTo(Sureness.LIKE_SEED);
    }

    @Test
    void seedOfAnotherSizeIsAGuessAndSaysSo() {
        StartingSetting start = start(BRASSICAS, 4, record(OATS, 0, 60, 90));

        assertThat(start.sureness()).isEqualTo(Sureness.FAR_SEED);
        assertThat(start.sureness().words()).contains("may be half off");
    }

    @Test
    void anotherSeedersRecordIsNoneAndTheGapSaysWhatToDo() {
        assertThat(StartingSetting.of("drill", OATS, 90, List.of(record(OATS, 0, 60, 90))))
                .isEmpty();
        assertThat(StartingSetting.gap("drill", OATS).text())
                .contains("drill")
                .contains("maker's chart");
    }
}
